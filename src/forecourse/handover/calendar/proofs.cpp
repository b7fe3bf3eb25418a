#include "forecourse/handover/calendar/proofs.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace forecourse::handover {
namespace {

using site::records::TestKind;

struct ProofOf {
  std::string_view figure;  ///< of a rule set, or rule of a study
  std::optional<TestKind> test;
  std::string_view inspection = {};
};

/// What each figure, and each check of a study, reads its day from; a test records every duty of the example stations
/// and looks whether its day moves.
constexpr auto proofs = std::to_array<ProofOf>({
    {"spill-container-tested", TestKind::spill_container},
    {"spill-container-monitored", {}, "walls"},
    {"overfill-device-tested", TestKind::overfill_device},
    {"tank-inspected-inside", {}, "inside"},
    {"tank-interstice-monitored", {}, "interstice"},
    {"gauge-leak-test", TestKind::gauge_leak_test},
    {"gauge-tested", TestKind::sensor},
    {"statistics-made", TestKind::statistics},
    {"wells-read", {}, "wells"},
    {"tank-tightness-tested", TestKind::tank_tightness},
    {"line-interstice-monitored", {}, "interstice"},
    {"interstice-gear-tested", TestKind::interstice},
    {"line-acceptance-tested", TestKind::line_acceptance},
    {"leak-detector-yearly", TestKind::leak_detector},
    {"line-yearly", TestKind::line_tightness},
    {"sump-tested", TestKind::sump},
    {"sump-own-test", TestKind::sump},
    {"sump-monitored", {}, "walls"},
    {"sump-sensor-tested", TestKind::sensor},
    {"shear-valve-tested", TestKind::shear_valve_trip},
    {"recovery-tested", TestKind::vapor_recovery},
    {"static-pressure-test", TestKind::vapor_return},
    {"vent-pressure-setting", TestKind::vent_valve},
    {"emergency-stop-tested", TestKind::emergency_stop},
    {"hand-held-tested", TestKind::hand_held},
    {"walked-30-days", {}, "30-day"},
    {"walked-annual", {}, "annual"},
});

}  // namespace

std::optional<Proof> proof_of(const Duty& duty) {
  const auto found = std::ranges::find(proofs, std::string_view(duty.figure), &ProofOf::figure);
  if (found == proofs.end()) return std::nullopt;
  return Proof{found->test, std::string(found->inspection), duty.subject};
}

}  // namespace forecourse::handover
