#pragma once

#include <algorithm>
#include <array>
#include <string_view>

#include "forecourse/site/fields/rules.h"
#include "forecourse/site/records/test.h"

namespace forecourse::site::records {

/// How records call what was tested.
inline constexpr std::array<WordFor<TestKind>, 19> test_words{{{"line-tightness", TestKind::line_tightness},
                                                               {"tank-tightness", TestKind::tank_tightness},
                                                               {"leak-detector", TestKind::leak_detector},
                                                               {"shear-valve-trip", TestKind::shear_valve_trip},
                                                               {"overfill-device", TestKind::overfill_device},
                                                               {"spill-container", TestKind::spill_container},
                                                               {"sump", TestKind::sump},
                                                               {"interstice", TestKind::interstice},
                                                               {"sensor", TestKind::sensor},
                                                               {"emergency-stop", TestKind::emergency_stop},
                                                               {"flow", TestKind::flow},
                                                               {"vent-valve", TestKind::vent_valve},
                                                               {"vapor-return", TestKind::vapor_return},
                                                               {"vapor-recovery", TestKind::vapor_recovery},
                                                               {"gauge-leak-test", TestKind::gauge_leak_test},
                                                               {"statistics", TestKind::statistics},
                                                               {"line-acceptance", TestKind::line_acceptance},
                                                               {"protection", TestKind::protection},
                                                               {"hand-held", TestKind::hand_held}}};

[[nodiscard]] constexpr std::string_view word(TestKind kind) {
  return std::find_if(test_words.begin(), test_words.end(), [kind](const auto& one) { return one.value == kind; })
      ->word;
}

}  // namespace forecourse::site::records
