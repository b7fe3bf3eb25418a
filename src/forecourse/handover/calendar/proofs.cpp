#include "forecourse/handover/calendar/proofs.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "forecourse/checks/rules/bound_rules.h"

namespace forecourse::handover {
namespace {

struct ProofOf {
  std::string_view of;  ///< figure of a rule set, or rule of a study
  std::string_view records;
  std::string_view kind;
};

constexpr std::string_view tests = "tests";
constexpr std::string_view looks = "inspections";

/// What each figure, and each check of a study, reads its day from; a test records every duty of the example stations
/// and looks whether its day moves.
constexpr auto proofs = std::to_array<ProofOf>({
    {"spill-container-tested", tests, "spill-container"},
    {"spill-container-monitored", looks, "walls"},
    {"overfill-device-tested", tests, "overfill-device"},
    {"tank-inspected-inside", looks, "inside"},
    {"tank-interstice-monitored", looks, "interstice"},
    {"gauge-leak-test", tests, "gauge-leak-test"},
    {"gauge-tested", tests, "sensor"},
    {"statistics-made", tests, "statistics"},
    {"wells-read", looks, "wells"},
    {"tank-tightness-tested", tests, "tank-tightness"},
    {"line-interstice-monitored", looks, "interstice"},
    {"interstice-gear-tested", tests, "interstice"},
    {"line-acceptance-tested", tests, "line-acceptance"},
    {"leak-detector-yearly", tests, "leak-detector"},
    {"line-yearly", tests, "line-tightness"},
    {"sump-tested", tests, "sump"},
    {"sump-own-test", tests, "sump"},
    {"sump-monitored", looks, "walls"},
    {"sump-sensor-tested", tests, "sensor"},
    {"shear-valve-tested", tests, "shear-valve-trip"},
    {"recovery-tested", tests, "vapor-recovery"},
    {"static-pressure-test", tests, "vapor-return"},
    {"vent-pressure-setting", tests, "vent-valve"},
    {"emergency-stop-tested", tests, "emergency-stop"},
    {"hand-held-tested", tests, "hand-held"},
    {"walked-30-days", looks, "30-day"},
    {"walked-annual", looks, "annual"},
});

/// The figure that a duty of a rule set is on, by its words, as of alternatives the one that counts gives these; of a
/// study its rule.
std::string_view source_of(const Duty& duty) {
  for (const std::vector<checks::BoundRequirement>& rules : checks::built_in_rules()) {
    for (const checks::BoundRequirement& rule : rules) {
      if (rule.set->id.text == duty.set && rule.entered->words.text == duty.what) return rule.figure->id;
    }
  }
  return duty.rule;
}

}  // namespace

std::optional<Proof> proof_of(const Duty& duty) {
  const auto found = std::ranges::find(proofs, source_of(duty), &ProofOf::of);
  if (found == proofs.end()) return std::nullopt;
  return Proof{std::string(found->records), std::string(found->kind), duty.subject};
}

}  // namespace forecourse::handover
