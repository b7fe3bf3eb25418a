#include "forecourse/lesson/numbers/check_pick.h"

#include "forecourse/checks/rules/period.h"
#include "forecourse/lesson/numbers/pick.h"

namespace forecourse::lesson {
namespace {

/// A finding about a part, or about the dispenser that bears it: "D1" of "D1.regular".
bool is_about(const checks::Finding& finding, const std::string& at) {
  return finding.subject == at || at.rfind(finding.subject + ".", 0) == 0;
}

}  // namespace

Picked of_finding(const From& from, const std::string& rule, const std::string& set) {
  const std::vector<checks::Finding> all = checks::all_findings(from.ground.checks);
  const auto place =
      place_of(all, [&](const checks::Finding& one) { return one.rule == rule && is_about(one, from.at); });
  if (!place) return nothing("name the rule set \"" + set + "\" under rules of [site]");
  return picked(all[*place].value, {"checks", "--on", checks::text(from.ground.checks.today)},
                at_place("/findings", *place) + "/value", all[*place].reason);
}

}  // namespace forecourse::lesson
