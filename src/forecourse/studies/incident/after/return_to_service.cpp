#include "forecourse/studies/incident/after/return_to_service.h"

#include <algorithm>
#include <utility>

#include "forecourse/studies/incident/after/equipment_here.h"
#include "forecourse/studies/incident/after/published_steps.h"

namespace forecourse::studies {
namespace {

constexpr const char* licensed = "licensed contractor";
constexpr const char* tester = "certified tester";
constexpr const char* electrician = "licensed electrician";
constexpr const char* operated = "operator";
constexpr const char* weights = "weights-and-measures officer";

class Steps {
 public:
  explicit Steps(const Scene& scene) : s_(scene), here_(equipment_here(scene)) {}

  std::vector<ReturnStep> all() {
    spill();
    switch (s_.options.kind) {
      case IncidentKind::struck:
        struck();
        break;
      case IncidentKind::drive_off:
        drive_off();
        break;
      case IncidentKind::sump_fire:
        fire();
        break;
      case IncidentKind::crack:
        crack();
        break;
      case IncidentKind::line_break:
        line_break();
        break;
      case IncidentKind::overfill:
        overfill();
        break;
      case IncidentKind::nozzle_left_open:
        nozzle();
        break;
    }
    if (s_.request.stop_at && here_.has_stop) {
      test("the emergency stop that was pressed, once it is reset", licensed, published::emergency_stop);
    }
    return std::move(steps_);
  }

 private:
  void step(const char* kind, const char* what, const char* by, const char* source) {
    steps_.push_back({what, kind, by, source});
  }
  void replace(const char* what, const char* by, const char* source) { step("replace", what, by, source); }
  void inspect(const char* what, const char* by, const char* source) { step("inspect", what, by, source); }
  void test(const char* what, const char* by, const char* source) { step("test", what, by, source); }
  void report(const char* what, const char* by, const char* source) { step("report", what, by, source); }

  // ---- steps of several kinds --------------------------------------------------------------------------

  void spill() {
    report(
        "fuel outside the containment is contained and cleaned up, and the authority told where the quantity asks it",
        operated, published::spill);
  }

  void release() {
    report("a release that is suspected or confirmed is told to the authority and looked into", operated,
           published::release);
  }

  void trip_test() {
    if (here_.has_valve) test("the shear valve is tripped, and nothing may flow then", tester, published::trip_test);
  }

  void anchorage() {
    if (!here_.has_valve) return;
    inspect(here_.may_have_bar ? "the shear valve's body, its anchorage and the stabilizer bar"
                               : "the shear valve's body and its anchorage",
            licensed, published::shear_valve);
  }

  void dispenser_back() {
    inspect("the dispenser's wiring and its bonding, before power returns", electrician, published::practice);
    test("the meters, where the dispenser was moved; they are sealed again where a seal was broken", weights,
         published::practice);
  }

  void before_fuel_flows() {
    if (here_.has_sump) {
      inspect("the sump is emptied, cleaned and looked at for damage; entry and hot work need their own permit",
              licensed, published::practice);
      test("the sump for tightness", tester, published::sump_test);
    }
    if (here_.has_sensor) test("the sump's sensor", tester, published::sensor_test);
    test("the line for tightness, before fuel flows", tester, published::line_test);
    if (here_.has_detector) test("the leak detector, with a simulated leak", tester, published::detector_test);
  }

  void risers() {
    inspect(here_.has_riser ? "riser, flexible connectors and fittings, from the island down to the line"
                            : "flexible connectors and fittings, from the island down to the line",
            licensed, published::practice);
  }

  // ---- kinds -------------------------------------------------------------------------------------------

  void struck() {
    if (here_.has_valve) {
      replace("the two-piece top of the shear valve; not its body, unless that fails inspection", licensed,
              published::practice);
    }
    anchorage();
    risers();
    before_fuel_flows();
    trip_test();
    dispenser_back();
  }

  void breakaway() {
    if (here_.hose == nullptr || (!here_.hose->breakaway && !here_.hose->parting)) return;
    const site::Fact again = here_.hose->parting ? here_.hose->parting->reconnectable : site::Fact{};
    if (again.value_or(false)) {
      inspect("the breakaway, and join it again as its listing says", licensed, published::drive_off);
    } else if (again) {
      replace("the breakaway", licensed, published::breakaway);
    } else {
      replace("the breakaway, unless its listing lets it be joined again after an inspection", licensed,
              published::breakaway);
    }
  }

  void drive_off() {
    breakaway();
    inspect("hose, swivel and nozzle, for damage by the pull", licensed, published::practice);
    test("the hose is purged of at least 2 gal; the display must not creep for 2 min while it is pulled and twisted",
         licensed, published::drive_off);
    anchorage();
    trip_test();
    inspect("the dispenser's foot and anchorage; if it moved, the steps after a strike apply too", licensed,
            published::practice);
  }

  void fire() {
    if (here_.has_link) replace("the fusible link", licensed, published::practice);
    if (here_.has_valve) {
      replace("the shear valve, unless it passes inspection and its trip test", licensed, published::practice);
    }
    anchorage();
    replace("seals, boots, hoses, flexible connectors and plastic parts that the heat has reached", licensed,
            published::practice);
    risers();
    before_fuel_flows();
    trip_test();
    dispenser_back();
  }

  void crack() {
    release();
    if (here_.has_valve) {
      replace("the part that is cracked: the two-piece top of the shear valve, or the whole valve", licensed,
              published::practice);
      anchorage();
      inspect("what loaded the groove: a riser under tension, a settled island", licensed, published::practice);
    } else {
      replace("the part that leaks", licensed, published::leaking_pipe);
    }
    before_fuel_flows();
    trip_test();
    if (here_.has_sensor) {
      inspect(here_.has_interlock ? "the sump's sensor and its interlock: did they tell?"
                                  : "the sump's sensor: did it tell?",
              licensed, published::practice);
    }
  }

  void line_break() {
    release();
    replace(
        "the length of line that is cut, with joints that its listing allows; entry and hot work need their own permit",
        licensed, published::leaking_pipe);
    inspect("how much of the run is new: if it counts as replaced, the whole run needs a second wall", licensed,
            published::replaced_run);
    before_fuel_flows();
    if (here_.may_have_two_walls) {
      test("the space between the line's walls, where it has two", tester, published::interstice);
    }
  }

  void overfill() {
    const site::Tank* tank = here_.tank;
    inspect("the level: no further delivery until the tank has room for it", operated, published::room_in_tank);
    if (tank == nullptr) return;
    const auto any = [&](auto has) { return std::any_of(tank->fills.begin(), tank->fills.end(), has); };
    const bool valve = any([](const site::Fill& fill) { return fill.overfill_valve.has_value(); });
    if (valve) {
      inspect("the overfill valve: why did it not stop the drop in time?", licensed, published::practice);
      test("the overfill valve", tester, published::overfill_test);
    }
    if (tank->overfill_alarm) {
      inspect("the overfill alarm: was it heard, and who acted?", operated, published::practice);
      test("the overfill alarm", tester, published::alarm_test);
    }
    if (any([](const site::Fill& fill) { return fill.spill_container.has_value(); })) {
      inspect("the spill container is emptied and looked at for damage", operated, published::practice);
      test("the spill container for tightness", tester, published::spill_container);
    }
    if (!tank->vents.empty()) {
      inspect("the vent and what is joined to it: fuel may stand in it", licensed, published::practice);
    }
  }

  void nozzle() {
    inspect("the nozzle and its automatic shutoff; replace it if it does not stop", licensed, published::practice);
    test("the nozzle stops by itself in a test can", licensed, published::practice);
  }

  const Scene& s_;
  EquipmentHere here_;
  std::vector<ReturnStep> steps_;
};

}  // namespace

std::vector<ReturnStep> return_to_service(const Scene& scene) { return Steps(scene).all(); }

}  // namespace forecourse::studies
