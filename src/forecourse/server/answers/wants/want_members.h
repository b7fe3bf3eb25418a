#pragma once

#include <algorithm>
#include <array>
#include <span>
#include <string_view>

namespace forecourse::server {

/// A member that a want may have, and its type in TypeScript; all but the first of a want may be left out.
struct WantMember {
  std::string_view name;
  std::string_view type;
};

/// Lists one behind the other.
template <std::size_t A, std::size_t B, std::size_t C>
constexpr std::array<WantMember, A + B + C> joined(const std::array<WantMember, A>& a,
                                                   const std::array<WantMember, B>& b,
                                                   const std::array<WantMember, C>& c) {
  std::array<WantMember, A + B + C> out{};
  std::copy(c.begin(), c.end(), std::copy(b.begin(), b.end(), std::copy(a.begin(), a.end(), out.begin())));
  return out;
}

inline constexpr auto flow_members = std::to_array<WantMember>({{"study", "\"flow\""},
                                                                {"open", "OpenSets"},
                                                                {"keep", "string"},
                                                                {"order", "string | string[]"},
                                                                {"parts", "FlowPart | FlowPart[]"},
                                                                {"units", "Units"}});
inline constexpr auto findings_members =
    std::to_array<WantMember>({{"study", "\"findings\""}, {"keep", "string"}, {"on", "string"}, {"units", "Units"}});
inline constexpr auto mends_members = std::to_array<WantMember>({{"study", "\"mends\""},
                                                                 {"rule", "string"},
                                                                 {"subject", "string"},
                                                                 {"keep", "string"},
                                                                 {"on", "string"},
                                                                 {"units", "Units"}});
inline constexpr auto calendar_members =
    std::to_array<WantMember>({{"study", "\"calendar\""}, {"on", "string"}, {"within", "number"}, {"units", "Units"}});
inline constexpr auto kit_members = std::to_array<WantMember>({{"study", "\"kit\""}, {"units", "Units"}});
inline constexpr auto lesson_members = std::to_array<WantMember>({{"study", "\"lesson\""},
                                                                  {"lesson", "string"},
                                                                  {"failure", "string"},
                                                                  {"at", "string"},
                                                                  {"questions", "number"},
                                                                  {"level", "number"},
                                                                  {"seed", "number"},
                                                                  {"page", "string"},
                                                                  {"on", "string"},
                                                                  {"units", "Units"}});
inline constexpr auto containment_members = std::to_array<WantMember>({{"study", "\"containment\""},
                                                                       {"inflows", "string | string[]"},
                                                                       {"sensor_dead_for", "string"},
                                                                       {"units", "Units"}});
inline constexpr auto tank_members = std::to_array<WantMember>({{"study", "\"tank\""},
                                                                {"tank", "string"},
                                                                {"depth", "string"},
                                                                {"at", "string"},
                                                                {"step", "string"},
                                                                {"rate", "string"},
                                                                {"room", "string"},
                                                                {"draws", "string | string[]"},
                                                                {"units", "Units"}});
inline constexpr auto flotation_members = std::to_array<WantMember>({{"study", "\"flotation\""},
                                                                     {"tank", "string"},
                                                                     {"water_level", "string"},
                                                                     {"filled", "string"},
                                                                     {"factor", "string"},
                                                                     {"units", "Units"}});
inline constexpr auto vapor_members = std::to_array<WantMember>(
    {{"study", "\"vapor\""}, {"temperature", "string"}, {"on", "string"}, {"units", "Units"}});
inline constexpr auto delivery_members = std::to_array<WantMember>({{"study", "\"delivery\""},
                                                                    {"delivery", "string"},
                                                                    {"tank", "string"},
                                                                    {"volume", "string"},
                                                                    {"rate", "string"},
                                                                    {"stop_at", "string"},
                                                                    {"without", "string | string[]"},
                                                                    {"blocked", "string | string[]"},
                                                                    {"units", "Units"}});
/// What an incident is asked for with, told or drawn.
inline constexpr auto incident_options = std::to_array<WantMember>({{"kind", "IncidentKind"},
                                                                    {"id", "string"},
                                                                    {"at", "string"},
                                                                    {"open", "string | string[]"},
                                                                    {"stop_at", "string"},
                                                                    {"for", "string"},
                                                                    {"open_area", "string"},
                                                                    {"without", "Barrier | Barrier[]"},
                                                                    {"dead", "string | string[]"},
                                                                    {"runs", "number"},
                                                                    {"seed", "number"},
                                                                    {"on", "string"}});
inline constexpr auto incident_members = joined(std::to_array<WantMember>({{"study", "\"incident\""}}),
                                                incident_options, std::to_array<WantMember>({{"units", "Units"}}));
inline constexpr auto ledger_members = std::to_array<WantMember>({{"study", "\"ledger\""},
                                                                  {"tank", "string"},
                                                                  {"month", "string"},
                                                                  {"from", "string"},
                                                                  {"to", "string"},
                                                                  {"delivered_as", "string"},
                                                                  {"meter_errors", "string | string[]"},
                                                                  {"evaporation", "string"},
                                                                  {"reading_deviation", "string"},
                                                                  {"delivery_deviation", "string"},
                                                                  {"sales_deviation", "string"},
                                                                  {"smallest_leak", "string"},
                                                                  {"own_volume", "string"},
                                                                  {"own_drift", "string"},
                                                                  {"own_expansion", "string"},
                                                                  {"units", "Units"}});
/// What a line test is asked for with, told or drawn.
inline constexpr auto line_test_options = std::to_array<WantMember>({{"product", "string"},
                                                                     {"warmer", "string | string[]"},
                                                                     {"fuel_temperature", "string"},
                                                                     {"ground_temperature", "string"},
                                                                     {"time_constant", "string"},
                                                                     {"ground", "string"},
                                                                     {"ground_conductivity", "string"},
                                                                     {"ground_heat", "string"},
                                                                     {"expansion", "string"},
                                                                     {"line_expansion", "string"},
                                                                     {"volume", "string"},
                                                                     {"compliance", "string"},
                                                                     {"per_degree", "string"},
                                                                     {"vapor", "string"},
                                                                     {"leak", "string"},
                                                                     {"leak_pressure", "string"},
                                                                     {"exponent", "string"},
                                                                     {"pressure", "string"},
                                                                     {"wait", "string"},
                                                                     {"duration", "string"},
                                                                     {"drop", "string"},
                                                                     {"measured", "string"},
                                                                     {"find", "string"},
                                                                     {"limit", "string"},
                                                                     {"quiet", "string | string[]"},
                                                                     {"stopped", "string"}});
inline constexpr auto line_test_members =
    joined(std::to_array<WantMember>({{"study", "\"line-test\""}}), line_test_options,
           std::to_array<WantMember>({{"on", "string"}, {"units", "Units"}}));
/// What meters are asked for with, told or drawn.
inline constexpr auto meter_options = std::to_array<WantMember>({{"hose", "string"},
                                                                 {"from", "string"},
                                                                 {"to", "string"},
                                                                 {"expansion", "string"},
                                                                 {"prices", "string | string[]"},
                                                                 {"yearly", "string | string[]"},
                                                                 {"limits", "string | string[]"}});
inline constexpr auto meter_members = joined(std::to_array<WantMember>({{"study", "\"meter\""}}), meter_options,
                                             std::to_array<WantMember>({{"units", "Units"}}));
inline constexpr auto compare_members = std::to_array<WantMember>({{"study", "\"compare\""},
                                                                   {"sets", "string | string[]"},
                                                                   {"open", "OpenSets"},
                                                                   {"keep", "string"},
                                                                   {"units", "Units"}});
inline constexpr auto flow_drawing_members = std::to_array<WantMember>({{"drawing", "FlowDrawing"},
                                                                        {"prefix", "string"},
                                                                        {"product", "string"},
                                                                        {"hose", "string"},
                                                                        {"open", "OpenSets"},
                                                                        {"keep", "string"},
                                                                        {"order", "string | string[]"},
                                                                        {"width", "number"},
                                                                        {"units", "Units"}});
inline constexpr auto sumps_members = std::to_array<WantMember>({{"drawing", "\"sumps\""},
                                                                 {"prefix", "string"},
                                                                 {"inflows", "string | string[]"},
                                                                 {"sensor_dead_for", "string"},
                                                                 {"width", "number"},
                                                                 {"units", "Units"}});
inline constexpr auto scene_members =
    joined(std::to_array<WantMember>({{"drawing", "\"scene\""}}), incident_options,
           std::to_array<WantMember>({{"prefix", "string"}, {"width", "number"}, {"units", "Units"}}));

inline constexpr auto flotation_drawing_members =
    std::to_array<WantMember>({{"drawing", "\"flotation\" | \"factor-by-water\" | \"factor-by-fill\""},
                               {"prefix", "string"},
                               {"tank", "string"},
                               {"water_level", "string"},
                               {"filled", "string"},
                               {"factor", "string"},
                               {"width", "number"},
                               {"units", "Units"}});
inline constexpr auto vapor_drawing_members =
    std::to_array<WantMember>({{"drawing", "\"vapor-pressure\" | \"static-test\""},
                               {"prefix", "string"},
                               {"temperature", "string"},
                               {"width", "number"},
                               {"units", "Units"}});

inline constexpr auto line_test_drawing_members =
    joined(std::to_array<WantMember>({{"drawing", "\"volume-test\" | \"shut-pressure\""}}), line_test_options,
           std::to_array<WantMember>({{"prefix", "string"}, {"width", "number"}, {"units", "Units"}}));

inline constexpr auto meter_drawing_members =
    joined(std::to_array<WantMember>({{"drawing", "\"meter-errors\""}}), meter_options,
           std::to_array<WantMember>({{"prefix", "string"}, {"width", "number"}, {"units", "Units"}}));

/// A want and its members.
struct WantShape {
  std::string_view name;  ///< "FlowWant"
  std::span<const WantMember> members;
};
inline constexpr auto want_shapes = std::to_array<WantShape>({{"FlowWant", flow_members},
                                                              {"FindingsWant", findings_members},
                                                              {"MendsWant", mends_members},
                                                              {"CalendarWant", calendar_members},
                                                              {"KitWant", kit_members},
                                                              {"LessonWant", lesson_members},
                                                              {"ContainmentWant", containment_members},
                                                              {"TankWant", tank_members},
                                                              {"FlotationWant", flotation_members},
                                                              {"VaporWant", vapor_members},
                                                              {"DeliveryWant", delivery_members},
                                                              {"IncidentWant", incident_members},
                                                              {"LedgerWant", ledger_members},
                                                              {"LineTestWant", line_test_members},
                                                              {"MeterWant", meter_members},
                                                              {"CompareWant", compare_members},
                                                              {"FlowDrawingWant", flow_drawing_members},
                                                              {"SumpsWant", sumps_members},
                                                              {"SceneWant", scene_members},
                                                              {"FlotationDrawingWant", flotation_drawing_members},
                                                              {"VaporDrawingWant", vapor_drawing_members},
                                                              {"LineTestDrawingWant", line_test_drawing_members},
                                                              {"MeterDrawingWant", meter_drawing_members}});

}  // namespace forecourse::server
