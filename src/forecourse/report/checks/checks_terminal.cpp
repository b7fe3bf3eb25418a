#include <fmt/format.h>

#include <algorithm>

#include "forecourse/report/checks/checks_report.h"
#include "forecourse/report/checks/mends_report.h"
#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

using checks::FindingState;

constexpr const char* computed_caution =
    "Computed from what was entered. It advises; a computed result is no test and no approval.";

bool in_short_list(FindingState state) { return state != FindingState::meets && state != FindingState::does_not_apply; }

}  // namespace

std::vector<std::string> checks_first(const checks::CheckResult& result) {
  std::vector<std::string> out;
  for (const checks::FindingSet& set : result.sets) {
    if (!set.of_study || set.findings.empty()) continue;
    if (set.id == "flotation") out.emplace_back(flotation_first);
    if (set.id == "delivery") out.emplace_back(stalled_caution);
  }
  return out;
}

std::vector<std::string> checks_cautions(const checks::CheckResult& result) {
  std::vector<std::string> out = checks_first(result);
  out.insert(
      out.end(),
      {computed_caution,
       "The edition of the code that the local authority has adopted rules, and so do the equipment's listing and "
       "instructions.",
       "Certified testers do the tests, licensed trades the work.",
       "A clause whose text was not verified is to be read before it is relied on."});
  return out;
}

std::string checks_caution(const checks::CheckResult& result) {
  std::string out;
  for (const std::string& first : checks_first(result)) out += first + " ";
  return out + computed_caution;
}

std::string clauses_in_words(const checks::CheckResult& result) {
  return fmt::format("{} requirement{}: the text of the clause was seen of {}, and was not of {}.", result.requirements,
                     result.requirements == 1 ? "" : "s", result.verified, result.requirements - result.verified);
}

std::string checks_summary(const checks::CheckResult& result, const site::Site& site, const terminal::Style& style,
                           const ChecksFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": checks");
  for (const std::string& first : checks_first(result)) page.notice("Caution", first);
  page.paragraph(std::string(computed_caution) + " forecourse " + result.version + ".");
  page.item(count_by_state(all_findings(result)) + ".");
  page.item(clauses_in_words(result));
  if (facts.mends && !facts.mends->empty()) page.paragraph(std::string("What would mend it. ") + mends_caution);
  for (const checks::FindingSet& set : result.sets) {
    page.heading(set.title + ": " + count_by_state(set.findings));
    if (!set.edition.empty()) page.remark(set.edition + ".");
    std::size_t left_out = 0;
    for (const FindingGroup& group : grouped(set.findings)) {
      const FindingState state = group.findings.front()->state;
      if (!style.verbose && !in_short_list(state)) {
        left_out += group.findings.size();
        continue;
      }
      page.notice(checks::word(state), in_words(group, site.display, glyphs));
      if (!facts.mends || state != FindingState::falls_short) continue;
      for (const std::string& line : mend_lines(*facts.mends, set, group, {site.display, glyphs, style.verbose})) {
        page.remark(line);
      }
    }
    if (left_out > 0) {
      page.remark(fmt::format("{} more that meet or do not apply: --verbose lists them.", left_out));
    }
  }
  tell_end({result.version, result.defaults, result.warnings, checks_cautions(result)}, site.display, glyphs,
           facts.written, page);
  return page.text();
}

}  // namespace forecourse::report
