#include "forecourse/handover/kit/part_kinds.h"

#include <algorithm>
#include <array>

namespace forecourse::handover {
namespace {

constexpr auto fuel = Bears::fuel;
constexpr auto vapor = Bears::vapor;
constexpr auto escapes = Consequence::fuel_escapes;
constexpr auto stops = Consequence::hoses_stop;
constexpr auto unseen = Consequence::leak_unseen;
constexpr auto other = Consequence::other;

constexpr PartKind plain(std::string_view kind, std::string_view noun, std::string_view function,
                         Bears bears = Bears::nothing, std::string_view ul = {}, std::string_view en = {}) {
  return {kind, noun, function, bears, ul, en};
}

constexpr PartKind pipe(std::string_view kind, std::string_view noun, std::string_view function, Bears bears) {
  return {kind, noun, function, bears, "line-listed-ul", "line-listed-en", true};
}

constexpr PartKind spare(PartKind part, Consequence fails, Serves serves, std::string_view without_it) {
  part.is_spare = true;
  part.fails = fails;
  part.serves = serves;
  part.without_it = without_it;
  return part;
}

// Which consequence a failed part has is common practice, no source; which hoses it shuts is found in the piping.
constexpr std::array part_kinds_of_the_course{
    plain("tanker-pipe", "pipe of the tanker", "Leads fuel from the tanker's compartment to its hose."),
    plain("delivery-hose", "delivery hose", "Leads the drop from the tanker to the fill."),
    plain("delivery-elbow", "delivery elbow", "Joins the delivery hose to the fill."),
    plain("vapor-hose", "vapor hose", "Leads vapor of the tank back to the tanker."),

    plain("fill", "fill", "Where the tanker's hose is joined to the tank."),
    pipe("fill-pipe", "fill pipe", "Leads the drop from a remote fill to the tank.", Bears::nothing),
    plain("drop-tube", "drop tube", "Leads the drop to the bottom of the tank, so that it does not splash."),
    spare(plain("spill-container", "spill container", "Holds what drips from the delivery hose."), escapes,
          Serves::nothing, "what drips from the delivery hose goes into the ground; no delivery until it is tight"),
    spare(plain("overfill-valve", "overfill valve", "Restricts a drop and then shuts it before the tank is too full.",
                Bears::nothing, "overfill-valve-listed-ul", "overfill-valve-listed-en"),
          escapes, Serves::nothing, "a drop can go on past the full tank; no delivery until it acts"),
    spare(plain("overfill-alarm", "overfill alarm", "Tells the driver to stop before the tank is too full."), escapes,
          Serves::nothing, "nobody is told that the tank fills up"),

    plain("tank", "tank", "Holds the fuel.", vapor, "tank-listed-ul"),
    spare(
        plain("tank-gauge", "tank gauge", "Reads level, water and temperature.", Bears::nothing, {}, "gauge-listed-en"),
        unseen, Serves::nothing, "level and loss of the tank are not read"),
    plain("gauge-stick", "gauge stick", "By which the level is read by hand."),
    spare(plain("interstice-monitor", "monitor of an interstice", "Watches the room between two walls."), unseen,
          Serves::nothing, "a leak of the inner wall is not seen"),
    plain("siphon-bar", "siphon bar", "Keeps joined tanks at one level.", Bears::nothing),
    plain("slab", "slab over a tank", "Weighs on the tank and spreads the load of vehicles."),
    plain("deadman", "deadman", "Weighs down the straps of a tank in wet ground."),
    plain("strap", "strap", "Ties a tank to its deadmen or its slab."),
    plain("sump-on-tank", "sump on a tank", "Gives access to the fittings on the tank."),
    plain("observation-well", "observation well", "Where fuel on the ground water is looked for."),
    plain("ground-barrier", "barrier in the ground", "Keeps fuel that leaked from spreading."),
    plain("cathodic-protection", "cathodic protection", "Keeps steel in the ground from corroding."),

    spare(plain("pump", "submersible pump", "Lifts fuel out of the tank and keeps the line under pressure.", fuel,
                "pump-listed-ul"),
          Consequence::product_stops, Serves::pump, ""),
    spare(plain("check-valve", "check valve", "Lets fuel flow one way, so that the line stays full.", fuel), unseen,
          Serves::nothing, "the line does not stay under pressure, and no test of it can be made"),
    spare(plain("pressure-relief", "pressure relief", "Lets fuel of a line that warms up back to the tank.", fuel),
          escapes, Serves::nothing, "fuel that warms up in the shut line strains it"),
    plain("pump-bypass", "bypass of a pump", "Lets a little flow back to the tank while every hose is shut.", fuel),
    spare(
        plain("leak-detector", "line leak detector", "Tests the line, and restricts or stops it when it leaks.", fuel),
        Consequence::product_stops, Serves::pump, "a leak of the line is not seen; where it sticks, it restricts"),
    pipe("pump-leg", "leg of a pump", "Leads from the pump's discharge to its line.", fuel),
    spare(plain("pump-control", "control of pumps", "Starts and stops the pumps of a product."), other, Serves::nothing,
          "pumps are not started and stopped by themselves"),

    pipe("line", "product line", "Leads fuel from the pump to the dispensers.", fuel),
    plain("fittings", "fittings of a pipe", "Join pipe, turn it and part it.", fuel),
    plain("flexible-joint", "flexible joint", "Lets a line move where it meets tank, island or riser.", fuel),
    plain("branch", "branch fitting", "Where lines meet without a dispenser.", fuel),

    plain("tank-sump", "tank sump", "Holds what leaks at the pump's head.", Bears::nothing, "sump-listed-ul"),
    plain("dispenser-sump", "dispenser sump", "Holds what leaks under the dispenser.", Bears::nothing,
          "sump-listed-ul"),
    spare(plain("sump-sensor", "sump sensor", "Tells of liquid in a sump."), unseen, Serves::nothing,
          "fuel in the sump is not seen"),
    spare(plain("entry-seal", "entry seal", "Keeps a sump tight where a line or conduit enters.", Bears::nothing,
                "sump-listed-ul"),
          escapes, Serves::nothing, "the sump does not hold what leaks into it"),
    plain("tee", "tee", "Parts the riser of a dispenser from the line.", fuel),
    plain("through-connection", "through connection", "Where the line enters and leaves at the valve's base.", fuel),
    pipe("riser", "riser", "Leads from the line up to the dispenser.", fuel),

    spare(plain("shear-valve", "shear valve",
                "Shuts when the dispenser is struck or burns; breaks at its groove, not below it.", fuel,
                "shear-valve-listed-ul", "shear-valve-listed-en"),
          escapes, Serves::inlet, "nothing shuts the line when the dispenser is struck"),
    plain("stabilizer-bar", "stabilizer bar", "Holds the shear valves, so that they break at their grooves."),

    plain("dispenser", "dispenser", "Measures and hands out fuel.", fuel, "dispenser-listed-ul", "dispenser-listed-en"),
    spare(plain("filter", "filter", "Keeps dirt and water out of meter and vehicle.", fuel), stops, Serves::inlet, ""),
    spare(plain("meter", "meter", "Measures what is sold.", fuel, "dispenser-listed-ul", "dispenser-listed-en"), stops,
          Serves::inlet, ""),
    spare(plain("control-valve", "control valve", "Opens and shuts the flow of a hose.", fuel, "dispenser-listed-ul",
                "dispenser-listed-en"),
          stops, Serves::own_hose, ""),
    plain("vehicle-guard", "guard against vehicles", "Keeps vehicles from the dispenser."),

    spare(plain("hose-set", "hanging hose set", "Leads fuel from the dispenser to the vehicle.", fuel), escapes,
          Serves::own_hose, "fuel runs out where it tears"),
    spare(plain("whip-hose", "whip hose", "Gives the breakaway room to turn into the pull.", fuel, "hose-listed-ul",
                "hose-listed-en"),
          escapes, Serves::own_hose, "fuel runs out where it tears"),
    spare(plain("breakaway", "breakaway", "Parts when a vehicle drives off, and shuts the ends.", fuel,
                "breakaway-listed-ul", "breakaway-listed-en"),
          escapes, Serves::own_hose, "a vehicle that drives off tears the hose"),
    spare(plain("curb-hose", "curb hose", "Leads fuel to the nozzle.", fuel, "hose-listed-ul", "hose-listed-en"),
          escapes, Serves::own_hose, "fuel runs out where it tears"),
    spare(plain("swivel", "swivel", "Lets the nozzle turn on the hose.", fuel, "swivel-listed-ul", "swivel-listed-en"),
          escapes, Serves::own_hose, "fuel drips where it turns"),
    spare(plain("flow-limiter", "flow limiter", "Holds the flow of a hose below a rule's limit.", fuel), stops,
          Serves::own_hose, "the hose may deliver more than a rule lets it"),
    plain("hose-rack", "rack or reel of a hose", "Keeps the hose off the ground."),
    plain("hose-retriever", "hose retriever", "Draws the hose back."),

    spare(plain("nozzle", "nozzle", "Hands fuel to the vehicle, and shuts when its tank is full.", fuel,
                "nozzle-listed-ul"),
          escapes, Serves::own_hose, "fuel runs over at the vehicle"),

    plain("vent", "vent", "Lets the tank breathe.", vapor),
    pipe("vent-pipe", "vent pipe", "Leads vapor from the tank up into the open.", vapor),
    pipe("vent-branch", "branch of a vent", "Leads vapor from a tank to a shared vent.", vapor),
    spare(plain("vent-valve", "pressure/vacuum vent valve", "Keeps vapor in until a pressure or a vacuum opens it.",
                vapor, "vent-valve-listed-ul"),
          escapes, Serves::nothing, "vapor leaves all the time, or the tank does not breathe"),
    plain("flame-arrester", "flame arrester", "Keeps a flame at the vent's outlet from the tank.", vapor),
    plain("vent-restrictor", "vent restrictor", "A float that restricts the vent when the tank is nearly full.", vapor),
    plain("vapor-return", "vapor return connection", "Where the vapor hose of the tanker is joined.", vapor),
    pipe("vapor-pipe", "vapor pipe", "Leads vapor from the tank to where the tanker's hose is joined.", vapor),
    plain("dispenser-vapor-line", "vapor line of a dispenser", "Leads vapor of vehicles back to the tank.", vapor),
    plain("vapor-recovery", "vapor recovery", "Draws the vapor of a vehicle's tank back.", vapor, {},
          "recovery-listed-en"),
    plain("vapor-processor", "vapor processor", "Treats recovered vapor.", vapor),

    spare(plain("emergency-stop", "emergency stop", "Stops the pumps in an emergency."), escapes, Serves::nothing,
          "nobody can stop the pumps from outside; no dispensing until it works"),
    plain("emergency-stop-sign", "sign of an emergency stop", "Tells what the switch does."),
    spare(plain("interlock", "interlock", "Acts by itself when something trips."), escapes, Serves::nothing,
          "what trips does not stop the flow"),
    spare(plain("extinguisher", "fire extinguisher", "Puts out a small fire."), other, Serves::nothing,
          "none is at hand"),
    plain("warning-sign", "warning sign", "Tells those who fuel what not to do."),
};

}  // namespace

const char* word(Consequence consequence) {
  switch (consequence) {
    case Consequence::product_stops:
      return "stops a product";
    case Consequence::fuel_escapes:
      return "lets fuel escape";
    case Consequence::hoses_stop:
      return "stops hoses";
    case Consequence::leak_unseen:
      return "leaves a leak unseen";
    case Consequence::other:
      break;
  }
  return "other";
}

bool is_wetted(const PartKind& kind) {
  constexpr std::array<std::string_view, 11> without_pressure{
      "fill",       "fill-pipe",      "drop-tube",   "spill-container", "overfill-valve", "tank-gauge",
      "siphon-bar", "dispenser-sump", "sump-sensor", "entry-seal",      "tank-sump"};
  return kind.bears != Bears::nothing ||
         std::find(without_pressure.begin(), without_pressure.end(), kind.kind) != without_pressure.end();
}

std::span<const PartKind> part_kinds() { return part_kinds_of_the_course; }

const PartKind* find_part_kind(std::string_view kind) {
  const auto found = std::find_if(part_kinds_of_the_course.begin(), part_kinds_of_the_course.end(),
                                  [&](const PartKind& one) { return one.kind == kind; });
  return found == part_kinds_of_the_course.end() ? nullptr : &*found;
}

}  // namespace forecourse::handover
