#include "forecourse/checks/station/check_record_parts.h"

#include <algorithm>
#include <string_view>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/site/text/read_run.h"

namespace forecourse::checks {
namespace {

using site::records::TestKind;

/// Parts of one kind, by the names that records may call them.
struct Named {
  std::string_view noun;  ///< "pump"
  std::vector<std::string> names = {};
};

/// The names of a station's parts, kind by kind.
class Names {
 public:
  explicit Names(const site::Site& site) {
    for (const site::Tank& tank : site.tanks) take(tank);
    for (const site::Pump& pump : site.pumps) pumps_.names.push_back(pump.id.text);
    for (const site::Line& line : site.lines) lines_.names.push_back(line.id.text);
    for (const site::Dispenser& dispenser : site.dispensers) take(dispenser);
    for (const site::EmergencyStop& stop : site.emergency_stops) stops_.names.push_back(stop.id.text);
    each_inlet_of(site, [&](std::string id, const site::Inlet&, const site::Dispenser&) {
      inlets_.names.push_back(std::move(id));
    });
    each_hose_of(site, [&](const site::Hose& hose, const site::Dispenser&) { hoses_.names.push_back(hose.id.text); });
    each_fill_of(site, [&](const std::string&, const site::Fill& fill, const site::Tank& tank) {
      for (std::string& name : record_names_of(tank, fill)) fills_.names.push_back(std::move(name));
    });
    each_vent_of(
        site, [&](std::string name, const site::Vent&, const site::Tank&) { vents_.names.push_back(std::move(name)); });
  }

  /// Those that a test of a kind may be of; none: of anything.
  [[nodiscard]] std::vector<const Named*> of(TestKind kind) const {
    switch (kind) {
      case TestKind::line_tightness:
      case TestKind::line_acceptance:
        return {&lines_};
      case TestKind::tank_tightness:
      case TestKind::vapor_return:
      case TestKind::gauge_leak_test:
      case TestKind::statistics:
        return {&tanks_};
      case TestKind::leak_detector:
        return {&pumps_};
      case TestKind::shear_valve_trip:
        return {&inlets_};
      case TestKind::overfill_device:
        return {&fills_, &tanks_};
      case TestKind::spill_container:
        return {&fills_};
      case TestKind::sump:
        return {&dispensers_, &tanks_, &pumps_};
      case TestKind::interstice:
        return {&tanks_, &lines_};
      case TestKind::sensor:
        return {&tanks_, &dispensers_, &pumps_, &sensors_};
      case TestKind::emergency_stop:
        return {&stops_};
      case TestKind::flow:
        return {&hoses_};
      case TestKind::vent_valve:
        return {&vents_, &tanks_};
      case TestKind::vapor_recovery:
        return {&dispensers_};
      case TestKind::hand_held:
        return {&station_};
      case TestKind::protection:
        return {};
    }
    return {};
  }

  /// Those that a look of a kind may be at; none: at anything.
  [[nodiscard]] std::vector<const Named*> of(const std::string& look) const {
    if (look == "interstice") return {&tanks_, &lines_};
    if (look == "walls") return {&fills_, &dispensers_, &tanks_, &pumps_};
    if (look == "wells") return {&wells_, &tanks_};
    if (look == "inside") return {&tanks_};
    return {};
  }

 private:
  void take(const site::Tank& tank) {
    tanks_.names.push_back(tank.id.text);
    for (const site::Compartment& part : tank.compartments) tanks_.names.push_back(part.id.text);
    for (const site::Well& well : tank.wells) wells_.names.push_back(name_in_tank(tank, tank.wells, well, "well"));
    if (tank.sump) take(*tank.sump);
  }

  void take(const site::Dispenser& dispenser) {
    dispensers_.names.push_back(dispenser.id.text);
    if (dispenser.sump) take(*dispenser.sump);
  }

  void take(const site::Sump& sump) {
    if (sump.sensor && !sump.sensor->id.empty()) sensors_.names.push_back(sump.sensor->id.text);
  }

  Named tanks_{"tank"};
  Named wells_{"well"};
  Named pumps_{"pump"};
  Named lines_{"line"};
  Named dispensers_{"dispenser"};
  Named sensors_{"sensor"};
  Named inlets_{"inlet"};
  Named hoses_{"hose"};
  Named fills_{"fill"};
  Named vents_{"vent"};
  Named stops_{"emergency stop"};
  Named station_{"hand-held gear", {"station"}};
};

void tell(const std::vector<const Named*>& kinds, const site::Name& part, const site::records::Moment& at,
          std::vector<Diagnostic>& out) {
  if (kinds.empty()) return;
  std::string nouns;
  std::vector<std::string_view> known;
  for (const Named* kind : kinds) {
    if (std::find(kind->names.begin(), kind->names.end(), part.text) != kind->names.end()) return;
    nouns += (nouns.empty() ? "" : " and no ") + std::string(kind->noun);
    known.insert(known.end(), kind->names.begin(), kind->names.end());
  }
  out.push_back({Severity::warning,
                 "the station has no " + nouns + " '" + site::shortened(part.text) + "': the record proves nothing",
                 part.where.end > part.where.begin ? part.where : at.day.where,
                 site::offer(part.text, known, "there are"),
                 {}});
}

}  // namespace

std::vector<Diagnostic> check_record_parts(const site::records::Records& records, const site::Site& site) {
  const Names names(site);
  std::vector<Diagnostic> out;
  for (const site::records::Test& test : records.tests) tell(names.of(test.kind), test.part, test.at, out);
  for (const site::records::Inspection& inspection : records.inspections) {
    for (const site::records::Inspected& item : inspection.items) {
      tell(names.of(inspection.kind.text), item.part, inspection.at, out);
    }
  }
  return out;
}

}  // namespace forecourse::checks
