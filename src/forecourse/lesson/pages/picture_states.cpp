#include "forecourse/lesson/pages/picture_states.h"

#include <array>

#include "forecourse/lesson/pages/picture.h"

namespace forecourse::lesson {

std::vector<PictureState> picture_states(std::string_view page, const From& from) {
  struct OfPage {
    std::string_view page;
    States (*states)(const From& from);
  };
  static constexpr std::array<OfPage, 30> all{{{"drop", drop_states},
                                               {"fill", fill_states},
                                               {"overfill-valve", overfill_valve_states},
                                               {"tank-walls", tank_walls_states},
                                               {"tank-water", tank_water_states},
                                               {"tank-breathing", tank_breathing_states},
                                               {"pump", pump_states},
                                               {"tank-sump", sump_states},
                                               {"leak-detector", leak_detector_states},
                                               {"double-wall", double_wall_states},
                                               {"line", line_states},
                                               {"sump", sump_states},
                                               {"shear-groove", shear_valve_states},
                                               {"shear-anchor", shear_valve_states},
                                               {"shear-poppets", shear_valve_states},
                                               {"shear-crack", shear_valve_states},
                                               {"shear-link", shear_valve_states},
                                               {"filter", filter_states},
                                               {"meter", meter_states},
                                               {"price", meter_states},
                                               {"whip-hose", parting_states},
                                               {"breakaway", parting_states},
                                               {"curb-hose", turning_states},
                                               {"swivel", turning_states},
                                               {"nozzle", nozzle_states},
                                               {"vehicle", vehicle_states},
                                               {"vapor-return", vapor_return_states},
                                               {"vent", vent_states},
                                               {"emergency-stop", emergency_stop_states},
                                               {"interlocks", interlock_states}}};
  for (const OfPage& one : all) {
    if (one.page == page) return one.states(from);
  }
  return {};
}

}  // namespace forecourse::lesson
