#include "forecourse/lesson/pages/page_kind.h"

#include <algorithm>

#include "forecourse/lesson/pages/page_parts.h"

namespace forecourse::lesson {
namespace {

constexpr const char* enter_valve = "add shear_valve = { ... } to a [[dispenser.inlet]]";
constexpr const char* enter_tank = "add a [[tank]]";
constexpr const char* enter_hose = "add a [[dispenser.hose]]";

}  // namespace

const std::vector<PageKind>& page_kinds() {
  static const std::vector<PageKind> all{
      {"drop", "delivery", "add a [[delivery]] that says how a tanker unloads here", deliveries},
      {"fill", "tank with a fill", "add a [[tank.fill]]", tanks_with_fill},
      {"overfill-valve", "tank with an overfill valve", "add overfill_valve = { ... } to a [[tank.fill]]",
       tanks_with_overfill_valve},
      {"tank-walls", "tank", enter_tank, tanks},
      {"tank-water", "tank", enter_tank, tanks_by_water},
      {"tank-breathing", "tank", enter_tank, tanks},
      {"pump", "pump", "add a [[pump]]", pumps},
      {"tank-sump", "tank with a sump", "add sump = { ... } to a [[tank]]", tanks_with_sump},
      {"leak-detector", "pump with a leak detector", "add leak_detector = { ... } to a [[pump]]", pumps_with_detector},
      {"double-wall", "double-walled line", "say double_wall = true of a [[line]]", double_walled_lines},
      {"line", "line", "add a [[line]]", lines},
      {"sump", "dispenser with a sump", "add sump = { ... } to a [[dispenser]]", dispensers_with_sump},
      {"shear-groove", "shear valve", enter_valve, shear_valves},
      {"shear-anchor", "shear valve", enter_valve, shear_valves},
      {"shear-poppets", "shear valve", enter_valve, shear_valves},
      {"shear-crack", "shear valve", enter_valve, shear_valves_cracked},
      {"shear-link", "shear valve with a fusible link", "add fusible_link = \"165 degF\" to a shear_valve",
       shear_valves_with_link},
      {"filter", "hose behind a filter", "add filter = { ... } to a [[dispenser.inlet]]", hoses_with_filter},
      {"meter", "hose behind a meter", "add meter = { ... } to a [[dispenser.hose]]", hoses_with_meter},
      {"price", "hose", enter_hose, hoses},
      {"whip-hose", "hose with a whip hose", "add whip = { ... } to a [[dispenser.hose]]", hoses_with_whip},
      {"breakaway", "hose with a breakaway", "add breakaway = { ... } to a [[dispenser.hose]]", hoses_with_breakaway},
      {"curb-hose", "hose with a curb hose", "add curb = { ... } to a [[dispenser.hose]]", hoses_with_curb},
      {"swivel", "hose with a swivel", "add swivel = { ... } to a [[dispenser.hose]]", hoses_with_swivel},
      {"nozzle", "hose", enter_hose, hoses},
      {"vehicle", "hose", enter_hose, hoses},
      {"vapor-return", "tank with a vapor return", "add vapor_return = { ... } to a [[tank]]", tanks_with_vapor_return},
      {"vent", "tank with a vent", "add a [[tank.vent]]", tanks_with_vent},
      {"emergency-stop", "emergency stop", "add an [[emergency_stop]]", emergency_stops},
      {"interlocks", "interlock", "add an [[interlock]]", interlocks}};
  return all;
}

const PageKind* find_page(std::string_view id) {
  const std::vector<PageKind>& all = page_kinds();
  const auto found = std::find_if(all.begin(), all.end(), [&](const PageKind& kind) { return kind.id == id; });
  return found == all.end() ? nullptr : &*found;
}

}  // namespace forecourse::lesson
