#include <algorithm>
#include <iterator>

#include "forecourse/handover/sheets/source.h"
#include "forecourse/site/places.h"

// Emergency stops, and what each cause does to each pump and dispenser.

namespace forecourse::handover {
namespace {

using site::records::TestKind;

bool has(const std::vector<site::Name>& all, const std::string& id) {
  return std::any_of(all.begin(), all.end(), [&](const site::Name& one) { return one.text == id; });
}

void stop_rows(const SheetSource& source, const site::EmergencyStop& stop, SheetSection& out) {
  const std::string path = "emergency_stop." + stop.id.text;
  const auto add = [&](SheetRow row) {
    row.where = stop.where;
    out.rows.push_back(std::move(row));
  };
  SheetRow height =
      amount_row("stop-height", "height above the floor in front of it", stop.id.text, path, Amount::depth);
  set_value(height, entered(stop.height), "entered", "not entered: height of the switch");
  height.limit = source.limit("emergency-stop-height");
  height.tolerance = around(height.value, source.agreed.height);
  add(std::move(height));
  const auto fact = [&](const char* id, const char* what, const site::Fact& entered, const char* figure) {
    SheetRow row = yes_no_row(id, what, stop.id.text, path);
    row.words = fact_words(entered);
    row.limit = source.limit(figure);
    add(std::move(row));
  };
  fact("stop-sign", "a sign tells what it does", stop.sign, "emergency-stop-sign");
  fact("stop-reset", "only a hand at the switch sets it back", stop.manual_reset, "emergency-stop-manual-reset");
  fact("stop-monitoring", "intrinsically safe monitoring of the tanks stays on", stop.keeps_monitoring,
       "stop-keeps-monitoring");
  SheetRow time = amount_row("stop-time", "time until the pumps stand", stop.id.text, path, Amount::time);
  set_value(time, entered(stop.acts_in), "entered", "not entered: acts_in of the switch");
  if (time.value) time.tolerance = {0.0, time.value, "no more than entered"};
  time.reading_of = TestKind::emergency_stop;
  add(std::move(time));
  SheetRow works = yes_no_row("stop-works", "pressed by itself, it stops all that it must stop", stop.id.text, path);
  works.test = TestKind::emergency_stop;
  works.limit = source.limit("emergency-stop-tested");
  works.who = source.who("emergency-stop-tested");
  add(std::move(works));
}

/// Something that trips, and the names by which an interlock may call it.
struct Cause {
  std::string id;
  std::string what;
  std::vector<std::string> names;
  const site::EmergencyStop* stop = nullptr;
};

std::vector<Cause> tank_causes(const site::Tank& tank) {
  std::vector<Cause> out;
  if (tank.sump && (tank.sump->sensor || tank.sump->sensor_height)) {
    Cause cause{tank.id.text, "sump sensor of tank " + tank.id.text, {}, nullptr};
    if (tank.sump->sensor && !tank.sump->sensor->id.empty()) cause.names.push_back(tank.sump->sensor->id.text);
    out.push_back(std::move(cause));
  }
  if (tank.overfill_alarm) {
    out.push_back({tank.id.text, "overfill alarm of tank " + tank.id.text, {}, nullptr});
  }
  return out;
}

std::vector<Cause> dispenser_causes(const site::Dispenser& dispenser) {
  std::vector<Cause> out;
  const std::string& id = dispenser.id.text;
  if (dispenser.sump && (dispenser.sump->sensor || dispenser.sump->sensor_height)) {
    Cause cause{id, "sump sensor of dispenser " + id, {id}, nullptr};
    if (dispenser.sump->sensor && !dispenser.sump->sensor->id.empty()) {
      cause.names.push_back(dispenser.sump->sensor->id.text);
    }
    out.push_back(std::move(cause));
  }
  const auto valve = [](const site::Inlet& inlet) { return inlet.shear_valve.has_value(); };
  if (std::any_of(dispenser.inlets.begin(), dispenser.inlets.end(), valve)) {
    out.push_back({id, "shear valve of dispenser " + id + " trips", {}, nullptr});
  }
  const auto breakaway = [](const site::Hose& hose) { return hose.breakaway.has_value(); };
  if (std::any_of(dispenser.hoses.begin(), dispenser.hoses.end(), breakaway)) {
    out.push_back({id, "breakaway of dispenser " + id + " parts", {}, nullptr});
  }
  return out;
}

std::vector<Cause> causes_of(const site::Site& site) {
  std::vector<Cause> out;
  for (const site::EmergencyStop& stop : site.emergency_stops) {
    out.push_back({stop.id.text, "emergency stop " + stop.id.text, {stop.id.text}, &stop});
  }
  for (const site::Pump& pump : site.pumps) {
    if (!pump.leak_detector) continue;
    Cause cause{pump.id.text, "leak detector of pump " + pump.id.text, {pump.id.text}, nullptr};
    if (!pump.leak_detector->id.empty()) cause.names.push_back(pump.leak_detector->id.text);
    out.push_back(std::move(cause));
  }
  const auto take = [&](std::vector<Cause> more) { std::move(more.begin(), more.end(), std::back_inserter(out)); };
  for (const site::Tank& tank : site.tanks) take(tank_causes(tank));
  for (const site::Dispenser& dispenser : site.dispensers) take(dispenser_causes(dispenser));
  return out;
}

const char* action_words(const site::Interlock& link) {
  if (!link.then) return "linked; what it does is not entered";
  switch (link.then->value) {
    case site::InterlockAction::stop:
      return "stops";
    case site::InterlockAction::alarm:
      return "alarms";
    case site::InterlockAction::restrict:
      return "is restricted";
  }
  return "";
}

/// What the site file says that a cause does to a pump or a dispenser.
struct Effect {
  std::string words;  ///< "stops", "not entered"
  std::optional<bool> acts;
};

Effect effect_of(const site::Site& site, const Cause& cause, const std::string& part, bool is_pump) {
  if (cause.stop != nullptr && is_pump && !cause.stop->stops.empty()) {
    const bool stops = has(cause.stop->stops, part);
    return {stops ? "stops" : "runs on, as entered: it must stop", stops};
  }
  if (cause.stop != nullptr && !is_pump && cause.stop->also_cuts_power) {
    const bool cuts = *cause.stop->also_cuts_power;
    return {cuts ? "power off" : "power stays, as entered: it must go", cuts};
  }
  bool linked = false;
  for (const site::Interlock& link : site.interlocks) {
    if (std::find(cause.names.begin(), cause.names.end(), link.when.text) == cause.names.end()) continue;
    if (has(link.what, part)) return {action_words(link), true};
    linked = true;
  }
  return {linked ? "not linked, as entered" : "not entered", linked ? std::optional(false) : std::nullopt};
}

/// What an emergency stop must do, whatever is entered: it leaves no pump and no dispenser with power.
/// \source [rp1200_17, 11.1]
RowLimit asked_of_stop(const SheetSource& source, bool is_pump) {
  RowLimit out = source.limit(is_pump ? "stop-leaves-running" : "emergency-stop-cuts-power");
  out.at_most.reset();
  return out;
}

}  // namespace

SheetSection stop_section(const SheetSource& source) {
  SheetSection out;
  out.id = "emergency-stop";
  out.title = "Emergency stops";
  if (source.site.emergency_stops.empty()) {
    out.notes = {"No emergency stop is entered: write here what is there."};
    out.rows.push_back(text_row("stop-none", "emergency stop, and where it is"));
    return out;
  }
  out.notes = {
      "Each switch is tested by itself, by a licensed electrician. A stop key at a console is no emergency stop."};
  for (const site::EmergencyStop& stop : source.site.emergency_stops) stop_rows(source, stop, out);
  out.rows.push_back(signature_row("emergency stops tested by"));
  return out;
}

SheetSection cause_and_effect_section(const SheetSource& source) {
  SheetSection out;
  out.id = "cause-and-effect";
  out.title = "Cause and effect";
  out.notes = {
      "A row is something that trips, a column what it acts on, a cell what the site file says of it. Where it says "
      "nothing, find out and write it. Yes: it acts.",
      "An emergency stop must act on every pump and every dispenser, whatever is entered.",
      "A shear valve and a breakaway shut by themselves; a link that also stops a pump is something else."};
  out.effects.reserve(source.site.pumps.size() + source.site.dispensers.size());
  for (const site::Pump& pump : source.site.pumps) out.effects.push_back(pump.id.text);
  const std::size_t pumps = out.effects.size();
  for (const site::Dispenser& dispenser : source.site.dispensers) out.effects.push_back(dispenser.id.text);
  for (const Cause& cause : causes_of(source.site)) {
    for (std::size_t i = 0; i < out.effects.size(); ++i) {
      const Effect effect = effect_of(source.site, cause, out.effects[i], i < pumps);
      SheetRow row = yes_no_row("effect", cause.what + " acts on " + out.effects[i], cause.id, {});
      row.effect = out.effects[i];
      row.words = effect.words;
      row.expected = effect.acts;
      if (cause.stop != nullptr) {
        row.expected = true;
        row.reading_of = TestKind::emergency_stop;
        row.limit = asked_of_stop(source, i < pumps);
      }
      if (!effect.acts) row.missing = "not entered: emergency_stop or interlock";
      out.rows.push_back(std::move(row));
    }
  }
  return out;
}

}  // namespace forecourse::handover
