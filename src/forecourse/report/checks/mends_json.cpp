#include "forecourse/report/checks/mends_report.h"

namespace forecourse::report {
namespace {

using decide::Mend;
using decide::MendEdit;
using decide::MendEffect;
using decide::MendSubject;
using decide::MendTry;

Json text_or_null(const std::optional<std::string>& text) { return text ? Json(*text) : Json(); }

Json state_json(const std::optional<checks::FindingState>& state) {
  return state ? Json(checks::word(*state)) : Json();
}

Json subject_json(const MendSubject& of) {
  return {
      {"set", of.set}, {"of_study", of.of_study}, {"rule", of.rule}, {"subject", of.subject}, {"number", of.number}};
}

Json edit_json(const MendEdit& edit) {
  return {{"path", edit.path}, {"before", text_or_null(edit.before)}, {"value", edit.after}};
}

Json effect_json(const MendEffect& effect) {
  Json out = subject_json(effect.of);
  out.update({{"requirement", effect.requirement},
              {"before", state_json(effect.before)},
              {"after", state_json(effect.after)},
              {"better", decide::is_better(effect)},
              {"worse", decide::is_worse(effect)},
              {"value_before", number_or_null(effect.value_before)},
              {"value_after", number_or_null(effect.value_after)},
              {"unit", effect.unit},
              {"of", checks::word(effect.measured)}});
  return out;
}

Json try_json(const MendTry& tried) {
  return {{"words", tried.words},
          {"edit", edit_json(tried.edit)},
          {"mends", tried.mends},
          {"work", tried.is_work},
          {"state", state_json(tried.state)},
          {"value", number_or_null(tried.value)},
          {"share", number_or_null(tried.share)},
          {"step_less", text_or_null(tried.step_less)},
          {"reason", report::text_or_null(tried.reason)}};
}

Json mend_json(const Mend& mend) {
  Json out = subject_json(mend.of);
  out.update({{"requirement", mend.requirement},
              {"way", decide::word(mend.way)},
              {"work", mend.is_work()},
              {"words", report::text_or_null(mend.words)},
              {"reason", report::text_or_null(mend.reason)},
              {"edits", array_of(mend.edits, edit_json)},
              {"before", checks::word(mend.before)},
              {"after", state_json(mend.after)},
              {"value_before", number_or_null(mend.value_before)},
              {"value_after", number_or_null(mend.value_after)},
              {"limit", number_or_null(mend.limit)},
              {"unit", mend.unit},
              {"of", checks::word(mend.measured)},
              {"share", number_or_null(mend.share)},
              {"warnings", mend.warnings},
              {"effects", array_of(mend.effects, effect_json)},
              {"least_flow_before_m3_per_s", number_or_null(mend.least_flow_before)},
              {"least_flow_after_m3_per_s", number_or_null(mend.least_flow_after)},
              {"tried", array_of(mend.tried, try_json)}});
  return out;
}

}  // namespace

Json mends_json(const std::vector<Mend>& mends) { return array_of(mends, mend_json); }

}  // namespace forecourse::report
