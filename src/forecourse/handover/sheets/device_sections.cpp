#include <algorithm>
#include <cmath>

#include "forecourse/checks/clause.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/sumps.h"
#include "forecourse/handover/sheets/source.h"
#include "forecourse/site/places.h"

// Shear valves, overfill devices, spill containers, sumps and vents: heights and settings, and what each must do.

namespace forecourse::handover {
namespace {

using site::records::TestKind;

void finish(SheetSection& out, const char* note, const char* signature) {
  if (out.rows.empty()) return;
  out.notes = {note};
  out.rows.push_back(signature_row(signature));
}

void shear_valve_rows(const SheetSource& source, const std::string& id, const site::ShearValve& valve,
                      const site::Dispenser& dispenser, SheetSection& out) {
  const std::string product = id.find('.') == std::string::npos ? id : id.substr(id.find('.') + 1);
  const std::string path = "dispenser." + dispenser.id.text + ".inlet." + product + ".shear_valve";
  const auto add = [&](SheetRow row) {
    row.where = valve.where;
    out.rows.push_back(std::move(row));
  };
  SheetRow anchored = yes_no_row("shear-anchored", "anchored to the island", id, path);
  anchored.words = fact_words(valve.anchored);
  anchored.limit = source.limit("shear-valve-anchored");
  add(std::move(anchored));
  SheetRow groove =
      amount_row("shear-groove", "shear groove above the top of the island (below it: minus)", id, path, Amount::depth);
  const auto at = entered(valve.groove_elevation);
  const auto top = entered(dispenser.elevation);
  set_value(groove, at && top ? std::optional(*at - *top) : std::nullopt, "entered",
            "not entered: groove_elevation of the valve and elevation of the dispenser");
  groove.limit = source.limit("shear-groove-offset");
  groove.tolerance = around(groove.value, source.agreed.height);
  add(std::move(groove));
  SheetRow clear = yes_no_row("shear-clear", "room around its body and its moving parts", id, path);
  clear.words = fact_words(valve.clear);
  clear.limit = source.limit("shear-valve-clear");
  add(std::move(clear));
  SheetRow link = amount_row("shear-link", "temperature marked on its fusible link", id, path, Amount::temperature);
  set_value(link, entered(valve.fusible_link), "entered", "not entered: fusible_link of the valve");
  if (link.value) link.tolerance = {link.value, link.value, "as entered"};
  add(std::move(link));
  SheetRow trip = yes_no_row("shear-trip", "tripped by hand: it shuts, and no product flows at the nozzle", id, path);
  trip.test = TestKind::shear_valve_trip;
  trip.limit = source.limit("shear-valve-tested");
  trip.who = source.who("shear-valve-tested");
  add(std::move(trip));
}

/// The setting that a route asks of a device at its place; null: none is determined.
const studies::OverfillSetting* asked_of(const studies::TankTold& tank, studies::OverfillDevice device) {
  for (const studies::OverfillSetting& one : tank.overfill.settings) {
    if (one.device == device && one.depth && one.route != "C") return &one;
  }
  return nullptr;
}

RowLimit overfill_limit(const SheetSource& source, const studies::OverfillSetting& asked) {
  checks::Finding of_route;
  checks::cite({"40 CFR 280.20(c)(1)(ii)(" + asked.route + ")", checks::tank_rule, site::ClauseSeen::text}, of_route);
  RowLimit out;
  out.words = asked.words;
  out.at_most = asked.depth;
  out.clause = of_route.clause;
  out.edition = of_route.edition;
  out.verified = of_route.clause_verified;
  out.binds = source.lives_under("us-federal");
  return out;
}

/// What the tank study tells of the levels in a tank; null: nothing.
const studies::TankTold* levels_of(const SheetSource& source, const std::string& tank) {
  if (!source.studied.tank) return nullptr;
  const auto& tanks = source.studied.tank->tanks;
  const auto found =
      std::ranges::find_if(tanks, [&](const auto& one) { return one.id == tank && one.problem.empty(); });
  return found == tanks.end() ? nullptr : &*found;
}

class OverfillRows {
 public:
  OverfillRows(const SheetSource& source, const site::Tank& entered, const studies::TankTold& tank)
      : source_(source), entered_(entered), tank_(tank) {}

  void add(SheetSection& out) const {
    for (const studies::DeviceSet& one : tank_.overfill.set) out.rows.push_back(set(one));
    for (const studies::OverfillDevice device : {studies::OverfillDevice::shutoff, studies::OverfillDevice::alarm}) {
      if (const auto* asked = asked_of(tank_, device)) out.rows.push_back(highest(*asked));
    }
    for (const studies::TankRoom& room : tank_.rooms) out.rows.push_back(level(room));
    for (const std::string& remark : tank_.overfill.remarks) {
      SheetRow row = told_row("overfill-remark", remark, tank_.id, "tank." + tank_.id);
      row.missing = "not determined";
      out.rows.push_back(std::move(row));
    }
  }

 private:
  [[nodiscard]] SheetRow row(const char* id, std::string what) const {
    SheetRow out = amount_row(id, std::move(what), tank_.id, "tank." + tank_.id, Amount::depth);
    out.where = tank_.where;
    return out;
  }

  /// A device as it is set: the depth at which it acts, measured where it hangs. It has the name of its duty.
  [[nodiscard]] SheetRow set(const studies::DeviceSet& one) const {
    SheetRow out = row("overfill-set", one.what + ", depth where it hangs");
    checks::each_overfill_device_of(entered_, [&](const auto& names, const auto& device, const std::string&) {
      if (device.where == one.where) out.part = names.front();
    });
    set_value(out, one.depth, "entered", "set by share, not by depth: measure it");
    out.figures = {{"volume then", Amount::volume, one.volume}, {"share of the capacity", Amount::share, one.share}};
    out.reading_of = TestKind::overfill_device;
    out.tolerance = around(out.value, source_.agreed.height);
    if (const auto* asked = asked_of(tank_, one.device)) out.limit = overfill_limit(source_, *asked);
    return out;
  }

  [[nodiscard]] SheetRow highest(const studies::OverfillSetting& asked) const {
    SheetRow out = told_row("overfill-highest", std::string("highest depth for a device that ") + asked.words, tank_.id,
                            "tank." + tank_.id);
    out.amount = Amount::depth;
    set_value(out, asked.depth, "tank study", {});
    if (asked.volume) out.figures.push_back({"volume then", Amount::volume, *asked.volume});
    if (asked.along) out.figures.push_back({"from the low end", Amount::height, *asked.along});
    out.limit = overfill_limit(source_, asked);
    out.limit.at_most.reset();
    return out;
  }

  /// The level of 90 % and of 95 %, above the lowest inside point.
  [[nodiscard]] SheetRow level(const studies::TankRoom& room) const {
    SheetRow out = told_row("overfill-level", "level above the lowest inside point", tank_.id, "tank." + tank_.id);
    out.amount = Amount::depth;
    set_value(out, room.level, "tank study", {});
    out.figures = {{"share of the capacity", Amount::share, room.share}, {"volume then", Amount::volume, room.volume}};
    return out;
  }

  const SheetSource& source_;
  const site::Tank& entered_;
  const studies::TankTold& tank_;
};

/// Whether each device acts, under the name that its duty has; without one of a tank whose levels are told.
void overfill_acts(const SheetSource& source, const site::Tank& tank, bool is_told, SheetSection& out) {
  const auto add = [&](const std::string& part, const std::string& path) -> SheetRow& {
    SheetRow acts = yes_no_row("overfill-acts", "acts at its level, looked at and moved by hand", part, path);
    acts.test = TestKind::overfill_device;
    acts.limit = source.limit("overfill-device-tested");
    acts.who = source.who("overfill-device-tested");
    out.rows.push_back(std::move(acts));
    return out.rows.back();
  };
  bool any = false;
  checks::each_overfill_device_of(tank, [&](const auto& names, const auto& device, const std::string& noun) {
    any = true;
    SheetRow& acts = add(names.front(), "tank." + tank.id.text);
    acts.words = noun;
    acts.where = device.where;
  });
  if (!any && is_told) add(tank.id.text, "tank." + tank.id.text).words = "no overfill device is entered";
}

/// The three readings of a test with water: settled, waited, changed.
void water_test_rows(const SheetSource& source, const std::string& of, const std::string& part, const std::string& path,
                     SheetSection& out) {
  SheetRow settled = amount_row(of + "-settled", "time that the water settled", part, path, Amount::time);
  settled.limit = source.limit(of + "-test-settled");
  SheetRow waited = amount_row(of + "-waited", "time from the first reading to the last", part, path, Amount::time);
  waited.limit = source.limit(of + "-test-waited");
  SheetRow change =
      amount_row(of + "-change", "change of the level in that time, without a sign", part, path, Amount::depth);
  change.limit = source.limit(of + "-test-change");
  const TestKind test = of == "sump" ? TestKind::sump : TestKind::spill_container;
  for (SheetRow* row : {&settled, &waited, &change}) {
    row->tolerance.source = the_limit_alone;
    row->reading_of = test;
  }
  out.rows.push_back(std::move(settled));
  out.rows.push_back(std::move(waited));
  out.rows.push_back(std::move(change));
  SheetRow tight = yes_no_row(of + "-tight", "tight, as the tester states", part, path);
  tight.test = test;
  tight.limit = source.limit(of == "sump" ? "sump-tested" : "spill-container-tested");
  tight.who = source.who(of == "sump" ? "sump-tested" : "spill-container-tested");
  out.rows.push_back(std::move(tight));
}

/// The seals whose height is to be entered, in words; empty: the height of each is known.
std::string seals_without_height(const site::Sump& sump) {
  std::string out;
  for (std::size_t i = 0; i < sump.seals.size(); ++i) {
    const site::EntrySeal& seal = sump.seals[i];
    if (seal.height) continue;
    out += (out.empty() ? "not entered: height of seal " : ", ") +
           (seal.id.empty() ? std::to_string(i + 1) : "'" + seal.id.text + "'");
  }
  return out;
}

/// The highest entry seal [m above the floor]; empty: none is listed, or the height of one is not entered.
std::optional<double> highest_seal(const site::Sump& sump) {
  std::optional<double> out;
  for (const site::EntrySeal& seal : sump.seals) {
    const auto height = entered(seal.height);
    if (!height) return std::nullopt;
    out = std::max(out.value_or(*height), *height);
  }
  return out;
}

/// How high the water must stand for a test of a sump: over its highest seal, or up to its top, whichever is lower.
std::optional<double> water_for(const SheetSource& source, const site::Sump& sump) {
  const auto over = source.limit("sump-test-above-seal").at_least;
  const auto under = source.limit("sump-test-below-top").at_most;
  const auto depth = entered(sump.depth);
  const auto seal = highest_seal(sump);
  if (!seal && !sump.seals.empty()) return std::nullopt;
  std::optional<double> out;
  if (depth && under) out = *depth - *under;
  if (seal && over) out = std::min(out.value_or(*seal + *over), *seal + *over);
  return out;
}

void sump_rows(const SheetSource& source, const checks::SumpOf& one, SheetSection& out) {
  const bool of_tank = std::any_of(source.site.tanks.begin(), source.site.tanks.end(),
                                   [&](const auto& tank) { return tank.id.text == one.subject; });
  const std::string path = (of_tank ? "tank." : "dispenser.") + one.subject + ".sump";
  const std::string no_height = seals_without_height(*one.sump);
  SheetRow seal =
      amount_row("sump-seal", "highest entry seal or seam above the floor", one.subject, path, Amount::depth);
  if (one.sump->seals.empty()) {
    set_value(seal, std::nullopt, {}, "not entered: seals of the sump, each with its height");
    if (const auto lowest = entered(one.sump->lowest_seal)) {
      seal.figures.push_back({"lowest entry seal", Amount::depth, *lowest});
    }
  } else {
    set_value(seal, highest_seal(*one.sump), "entered", no_height);
  }
  seal.tolerance = around(seal.value, source.agreed.height);
  out.rows.push_back(std::move(seal));
  SheetRow water =
      amount_row("sump-water", "water above the floor as the test begins", one.subject, path, Amount::depth);
  set_value(water, water_for(source, *one.sump), "from the heights entered",
            no_height.empty() ? "not entered: depth of the sump, and its seals" : no_height);
  water.limit = source.limit("sump-test-above-seal");
  water.limit.at_least = water.value;
  if (water.value) water.limit.at_most = entered(one.sump->depth);  // else it would be all that decides
  water.tolerance.source = the_limit_alone;
  water.reading_of = TestKind::sump;
  out.rows.push_back(std::move(water));
  water_test_rows(source, "sump", one.subject, path, out);
  if (!one.sump->sensor && !one.sump->sensor_height) return;
  SheetRow sensor =
      amount_row("sensor-height", "height above the floor at which its sensor trips", one.subject, path, Amount::depth);
  const auto own = one.sump->sensor ? entered(one.sump->sensor->height) : std::nullopt;
  set_value(sensor, own ? own : entered(one.sump->sensor_height), "entered", "not entered: sensor_height of the sump");
  sensor.tolerance = around(sensor.value, source.agreed.height);
  sensor.reading_of = TestKind::sensor;
  if (source.studied.containment) {
    for (const studies::ContainedSump& told : source.studied.containment->sumps) {
      if (told.owner == one.subject && told.at_sensor) {
        sensor.figures.push_back({"volume then", Amount::volume, *told.at_sensor});
      }
    }
  }
  out.rows.push_back(std::move(sensor));
  SheetRow acts = yes_no_row("sensor-acts", "its sensor alarms when it is wetted", one.subject, path);
  acts.test = TestKind::sensor;
  acts.limit = source.limit("sump-sensor-tested");
  acts.who = source.who("sump-sensor-tested");
  out.rows.push_back(std::move(acts));
}

void vent_rows(const SheetSource& source, const std::string& name, const site::Vent& vent, const site::Tank& tank,
               SheetSection& out) {
  const std::string path = "tank." + tank.id.text + ".vent";
  SheetRow height = amount_row("vent-height", "outlet above the ground beside it", name, path, Amount::height);
  set_value(height, entered(vent.outlet_elevation), "entered, above the site datum",
            "not entered: outlet_elevation of the vent");
  height.limit = source.at_least("vent-height", name);
  height.tolerance = around(height.value, source.agreed.height);
  out.rows.push_back(std::move(height));
  SheetRow upward = yes_no_row("vent-upward", "blows upward, or away from walls", name, path);
  upward.words = fact_words(vent.upward);
  upward.limit = source.limit("vent-upward");
  out.rows.push_back(std::move(upward));
  if (!vent.valve) {
    SheetRow none = yes_no_row("vent-valve-none", "it has no pressure/vacuum valve, as entered", name, path);
    out.rows.push_back(std::move(none));
    return;
  }
  const auto add = [&](const char* id, const char* what, const std::optional<double>& value, const char* missing,
                       RowLimit limit, Amount amount) {
    SheetRow row = amount_row(id, what, name, path, amount);
    set_value(row, value, "entered", missing);
    row.limit = std::move(limit);
    row.tolerance.source = to_be_agreed;
    row.reading_of = TestKind::vent_valve;
    row.where = vent.valve->where;
    out.rows.push_back(std::move(row));
  };
  const auto rule = [&](const char* figure, const char* finding) {
    RowLimit own = source.limit(figure);
    return own.binds ? own : source.clause(finding, name);
  };
  add("vent-opens", "pressure at which its valve opens", entered(vent.valve->opens_at),
      "not entered: opens_at of the valve", rule("vent-valve-opens-at", "vent-pressure-setting"),
      Amount::vapor_pressure);
  add("vent-vacuum-opens", "vacuum at which its valve opens", entered(vent.valve->vacuum_opens_at),
      "not entered: vacuum_opens_at of the valve", rule("vent-valve-vacuum-opens-at", "vent-vacuum-setting"),
      Amount::vapor_pressure);
  add("vent-leak", "its leak at 2 in of water", entered(vent.valve->pressure_leak),
      "not entered: pressure_leak of the valve", rule("vent-valve-pressure-leak", "vent-pressure-leak"),
      Amount::vapor_leak);
  SheetRow tested = yes_no_row("vent-valve-passes", "in order, as the tester states", name, path);
  tested.test = TestKind::vent_valve;
  tested.who = "a certified tester";
  out.rows.push_back(std::move(tested));
}

/// Of a tank whose vapor is given back, where the rule asks for its static pressure test.
void static_test_row(const SheetSource& source, const site::Tank& tank, SheetSection& out) {
  const RowLimit limit = source.clause("static-pressure-test", tank.id.text);
  if (limit.clause.empty() || !tank.vapor_return) return;
  SheetRow row = yes_no_row("static-pressure-held",
                            "the room above the fuel keeps the pressure of the static test, as the tester states",
                            tank.id.text, "tank." + tank.id.text + ".vapor_return");
  row.test = TestKind::vapor_return;
  row.limit = limit;
  row.who = "a certified tester";
  row.where = tank.vapor_return->where;
  out.rows.push_back(std::move(row));
}

}  // namespace

SheetSection shear_valve_section(const SheetSource& source) {
  SheetSection out = section("shear-valve", "Shear valves", "No shear valve is entered.");
  checks::each_inlet_of(source.site, [&](const std::string& id, const site::Inlet& inlet, const site::Dispenser& at) {
    if (inlet.shear_valve) shear_valve_rows(source, id, *inlet.shear_valve, at, out);
  });
  finish(out,
         "A valve that is not anchored, or whose groove lies elsewhere, may stay open when the dispenser is struck.",
         "shear valves tested by");
  return out;
}

SheetSection overfill_section(const SheetSource& source) {
  SheetSection out = section("overfill", "Overfill devices", "No tank with its sizes is entered.");
  for (const site::Tank& tank : source.site.tanks) {
    const std::size_t before = out.rows.size();
    std::vector<std::string> ids{tank.id.text};
    for (const site::Compartment& one : tank.compartments) ids.push_back(one.id.text);
    for (const std::string& id : ids) {
      if (const studies::TankTold* told = levels_of(source, id)) OverfillRows(source, tank, *told).add(out);
    }
    overfill_acts(source, tank, out.rows.size() > before, out);
  }
  finish(out,
         "Levels are shares of the volume, never of the diameter. Depths are from the bottom where the device hangs.",
         "overfill devices looked at by");
  return out;
}

SheetSection spill_section(const SheetSource& source) {
  SheetSection out = section("spill-container", "Spill containers", "No spill container is entered.");
  checks::each_fill_of(source.site, [&](const std::string& name, const site::Fill& fill, const site::Tank& tank) {
    if (!fill.spill_container) return;
    const std::string path = "tank." + tank.id.text + ".fill";
    SheetRow water = amount_row("spill-water", "water below the top as the test begins", name, path, Amount::depth);
    water.limit = source.limit("spill-test-below-top");
    water.tolerance.source = the_limit_alone;
    water.reading_of = TestKind::spill_container;
    if (const auto volume = entered(fill.spill_container->volume)) {
      water.figures.push_back({"it holds", Amount::volume, *volume});
    }
    out.rows.push_back(std::move(water));
    water_test_rows(source, "spill", name, path, out);
  });
  finish(out, "Tested with water. It is waste afterwards: dispose of it as the local authority asks.",
         "spill containers tested by");
  return out;
}

SheetSection sump_section(const SheetSource& source) {
  SheetSection out = section("sump", "Sumps", "No sump is entered.");
  checks::each_sump(source.facts, [&](const checks::SumpOf& one) {
    sump_rows(source, one, out);
    return checks::FigureAt{};
  });
  finish(out, "No one goes into a sump for this; where somebody must, a permit and those trained for it decide.",
         "sumps tested by");
  return out;
}

SheetSection vent_section(const SheetSource& source) {
  SheetSection out = section("vent", "Vents", "No vent is entered.");
  for (const site::Tank& tank : source.site.tanks) static_test_row(source, tank, out);
  checks::each_vent_of(source.site, [&](const std::string& name, const site::Vent& vent, const site::Tank& tank) {
    vent_rows(source, name, vent, tank, out);
  });
  finish(out, "Settings are those entered; read the mark of the valve against them.", "vents looked at by");
  return out;
}

}  // namespace forecourse::handover
