#pragma once

#include <array>
#include <limits>
#include <span>
#include <string_view>

#include "forecourse/base/api_units.h"
#include "forecourse/site/dispenser.h"
#include "forecourse/site/equipment/pump_control.h"
#include "forecourse/site/equipment/safety.h"
#include "forecourse/site/pump.h"
#include "forecourse/site/running/delivery.h"
#include "forecourse/site/site.h"
#include "forecourse/site/tank.h"

namespace forecourse::site {

// What a description of a key says beside its member and its sentence. A description is a function
//
//     template <class Visitor> void fields(Visitor& v, Tank& tank)
//
// in one of the headers of this folder. It names each key of a table once; the reader, the JSON schema and the
// reference page are visitors of it. `v.about(name, sentence)` comes first and names the table.

/// Whether a table without this key is an error.
enum class Need { optional, required };

/// Which values of a quantity make sense, in SI.
struct Range {
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();
  bool above_low = false;  ///< `low` itself is out
  const char* words = "";  ///< "above zero"
};

inline constexpr double no_limit = std::numeric_limits<double>::infinity();
inline constexpr Range any_value{};
inline constexpr Range positive{0.0, no_limit, true, "above zero"};
inline constexpr Range not_negative{0.0, no_limit, false, "zero or more"};
inline constexpr Range below_grade{0.0, no_limit, false,
                                   "zero or more (water above grade is a flood, no ground water)"};
inline constexpr Range share_of_one{0.0, 1.0, false, "from 0 to 1 (0 % to 100 %)"};
inline constexpr Range at_least_one{1.0, no_limit, false, "1 or more"};
/// The range of the tables that fuel properties come from.
inline constexpr Range fuel_temperature{kelvin_from_celsius(-50.0), kelvin_from_celsius(150.0), false,
                                        "from -58 to 302 degF (-50 to 150 degC)"};
inline constexpr Range fuel_density{500.0, 1200.0, false, "from 500 to 1200 kg/m3"};
inline constexpr Range site_altitude{-500.0, 9000.0, false, "from -1640 to 29500 ft (-500 to 9000 m)"};
inline constexpr Range molar_mass{16.0, 300.0, false, "from 16 to 300 (g/mol)"};
inline constexpr Range pump_speed{0.0, 2.0, true, "above zero and at most 2 (200 %)"};
inline constexpr Range quarter_turn{-1.5, 1.5, false, "from -85 to 85 deg"};
inline constexpr Range gradient{-1.0, 1.0, false, "from -1 to 1 (-100 % to 100 %)"};

/// What an id may stand for.
enum class PartKind { product, tank, pump, hose, place, pump_or_dispenser, tripping_part, incident_place, delivery };

/// Which ids may be given: a plain one, or one with dots in it.
enum class IdRule { plain, dotted };

/// A word of a closed list and what it stands for.
template <class E>
struct WordFor {
  std::string_view word;
  E value;
};

inline constexpr std::array<WordFor<Display>, 2> display_words{{{"us", Display::us}, {"si", Display::si}}};
inline constexpr std::array<WordFor<TankEnd>, 3> tank_end_words{
    {{"fill", TankEnd::fill}, {"gauge", TankEnd::gauge}, {"pump", TankEnd::pump}}};
inline constexpr std::array<WordFor<CurveFit>, 2> curve_fit_words{
    {{"monotone", CurveFit::monotone}, {"power", CurveFit::power}}};
inline constexpr std::array<WordFor<LeakDetectorKind>, 2> leak_detector_words{
    {{"mechanical", LeakDetectorKind::mechanical}, {"electronic", LeakDetectorKind::electronic}}};
inline constexpr std::array<WordFor<Connection>, 2> connection_words{
    {{"tee", Connection::tee}, {"through", Connection::through}}};
inline constexpr std::array<WordFor<Poppet>, 2> poppet_words{
    {{"single", Poppet::single_poppet}, {"double", Poppet::double_poppet}}};
inline constexpr std::array<WordFor<ControlKind>, 5> control_words{{{"off", ControlKind::off},
                                                                    {"all", ControlKind::all},
                                                                    {"lead-lag", ControlKind::lead_lag},
                                                                    {"alternating", ControlKind::alternating},
                                                                    {"variable-speed", ControlKind::variable_speed}}};
inline constexpr std::array<WordFor<InterlockAction>, 3> action_words{
    {{"stop", InterlockAction::stop}, {"alarm", InterlockAction::alarm}, {"restrict", InterlockAction::restrict}}};
inline constexpr std::array<WordFor<Surfaces>, 2> surfaces_words{
    {{"fixed", Surfaces::fixed}, {"moving", Surfaces::moving}}};
inline constexpr std::array<WordFor<TruckVent>, 2> truck_vent_words{
    {{"ullage", TruckVent::ullage}, {"air", TruckVent::air}}};

inline constexpr std::array<std::string_view, 3> shell_words{"horizontal-cylinder", "vertical-cylinder", "rectangular"};
inline constexpr std::array<std::string_view, 5> head_words{"flat", "dished", "elliptical", "hemispherical", "conical"};
inline constexpr std::array<std::string_view, 2> siphon_words{"siphon", "manifold"};
inline constexpr std::array<std::string_view, 2> rupture_words{"axis", "bottom"};
inline constexpr std::array<std::string_view, 4> pipe_material_words{"steel", "fiberglass", "plastic",
                                                                     "flexible-metal"};
inline constexpr std::array<std::string_view, 3> fill_mark_words{"circle", "hexagon", "pentagon"};
inline constexpr std::array<std::string_view, 3> sump_words{"tapered", "box", "round"};
inline constexpr std::array<std::string_view, 3> sensor_words{"float", "optical", "other"};
inline constexpr std::array<std::string_view, 5> interstice_words{"dry", "brine", "vacuum", "pressure", "none"};
inline constexpr std::array<std::string_view, 2> vapor_return_words{"two-point", "coaxial"};
inline constexpr std::array<std::string_view, 2> gauge_words{"automatic", "stick"};
inline constexpr std::array<std::string_view, 6> monitoring_words{"interstice",     "gauge",      "inventory",
                                                                  "manual-gauging", "statistics", "wells"};
inline constexpr std::array<std::string_view, 3> sound_words{"inspection", "monitoring", "tests"};
inline constexpr std::array<std::string_view, 1> pump_words{"submersible"};
inline constexpr std::array<std::string_view, 2> acceptance_words{"hydrostatic", "pneumatic"};
inline constexpr std::array<std::string_view, 7> incident_words{"struck",     "drive-off", "sump-fire",       "crack",
                                                                "line-break", "overfill",  "nozzle-left-open"};
inline constexpr std::array<std::string_view, 3> drain_words{"interceptor", "storm-drain", "none"};
inline constexpr std::array<std::string_view, 4> actor_words{"attendant", "customer", "fire-service", "automatic"};

}  // namespace forecourse::site
