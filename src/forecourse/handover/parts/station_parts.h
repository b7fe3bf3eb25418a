#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "forecourse/site/site.h"
#include "forecourse/site/stop.h"

namespace forecourse::handover {

using site::Stop;
using site::word;

/// What the file says of a part, where it has a table of its own there. A part that is told by one key, such as a check
/// valve, has what that key stands in: its pump.
using PartData = std::variant<
    std::monostate, const site::Tank*, const site::Fill*, const site::DropTube*, const site::SpillContainer*,
    const site::OverfillValve*, const site::OverfillAlarm*, const site::TankGauge*, const site::Interstice*,
    const site::SiphonBar*, const site::Slab*, const site::Deadman*, const site::Strap*, const site::BuriedSump*,
    const site::Well*, const site::Barrier*, const site::Protection*, const site::Vent*, const site::VentValve*,
    const site::VaporReturn*, const site::Pump*, const site::LeakDetector*, const site::PumpControl*, const site::Pipe*,
    const site::EnteredLoss*, const site::Line*, const site::Branch*, const site::Sump*, const site::SumpSensor*,
    const site::EntrySeal*, const site::Dispenser*, const site::Inlet*, const site::ShearValve*, const site::Part*,
    const site::Hose*, const site::VaporLine*, const site::VaporRecovery*, const site::VaporProcessor*,
    const site::EmergencyStop*, const site::Interlock*, const site::Extinguisher*, const site::Operations*>;

/// One part of a station.
struct StationPart {
  std::string kind;     ///< "shear-valve"
  std::string path;     ///< as an edit takes it: "dispenser.D1.inlet.regular.shear_valve"
  std::string subject;  ///< what findings call it
  Stop stop = Stop::station;
  SourceSpan where{};                      ///< in the site file
  std::optional<int> count = 1;            ///< empty: the file says that there are some, not how many
  std::string owner;                       ///< id of the tank, pump, line, dispenser or hose that it belongs to
  std::vector<std::string> products = {};  ///< ids of those that it is wetted by, or whose vapor; of a shared
                                           ///< outlet those of all tanks that share it
  std::vector<std::string> places = {};    ///< in the piping, where its pressure is that of the part: "D1.regular"
  bool of_tanker = false;                  ///< comes with the tanker
  const site::Inlet* inlet = nullptr;      ///< of a dispenser, that it is part of
  const site::Hose* hose = nullptr;        ///< that it is part of
  PartData data = {};                      ///< points into the site that it was read from
};

/// Every part of a station, each once, in the order of the course and there in that of the file. What the file does not
/// list is no part: a hose whose losses are entered as one has no nozzle here. Tanks that share a vent or a vapor pipe
/// have one outlet: the part is that of the tank where its pipe or valve stands first.
[[nodiscard]] std::vector<StationPart> parts_of_station(const site::Site& site);

/// Those of one kind.
[[nodiscard]] std::vector<const StationPart*> of_kind(const std::vector<StationPart>& parts, std::string_view kind);

}  // namespace forecourse::handover
