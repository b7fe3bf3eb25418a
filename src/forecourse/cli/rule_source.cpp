#include "forecourse/cli/rule_source.h"

#include <algorithm>
#include <iterator>

#include "forecourse/checks/rules/bound_rules.h"
#include "forecourse/cli/console.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/site/rules/read_rule_set.h"
#include "forecourse/store/read_records.h"

namespace forecourse::cli {
namespace {

/// The name of the last set, where it is that of a built-in one or of one before it.
std::optional<Diagnostic> name_taken(const std::vector<site::RuleSet>& sets) {
  const site::Name& id = sets.back().id;
  const auto same = [&](const site::RuleSet& one) { return one.id == id; };
  const std::vector<site::RuleSet>& built_in = site::built_in_rule_sets();
  const bool taken =
      std::any_of(built_in.begin(), built_in.end(), same) || std::any_of(sets.begin(), std::prev(sets.end()), same);
  if (!taken) return std::nullopt;
  return Diagnostic{
      Severity::error, "there is already a rule set '" + id.text + "'", id.where, "give it an id of its own", {}};
}

}  // namespace

std::optional<std::vector<site::RuleSet>> read_rule_sets(const std::vector<std::string>& paths,
                                                         std::vector<report::SourceText>& texts) {
  std::vector<site::RuleSet> out;
  std::vector<Diagnostic> wrong;
  for (const std::string& path : paths) {
    std::string text;
    if (!read_site_file(path, text)) return std::nullopt;
    texts.push_back({path, text});
    Parsed<site::RuleSet> read = site::read_rule_set(text, static_cast<std::uint32_t>(texts.size() - 1));
    wrong.insert(wrong.end(), read.diagnostics.begin(), read.diagnostics.end());
    out.push_back(std::move(read.value));
    if (auto taken = name_taken(out)) wrong.push_back(std::move(*taken));
    const auto bound = checks::bind(out.back());
    wrong.insert(wrong.end(), bound.diagnostics.begin(), bound.diagnostics.end());
  }
  if (!has_error(wrong)) return out;
  print_error(report::to_text(wrong, texts));
  return std::nullopt;
}

bool read_given_records(const std::string& path, SiteSource& source, std::optional<site::records::Records>& records) {
  if (path.empty()) return true;
  auto read = store::read_records(path, source.texts, &source.site);
  if (!read.ok()) {
    print_error(report::to_text(read.diagnostics, source.texts));
    return false;
  }
  source.warnings.insert(source.warnings.end(), read.diagnostics.begin(), read.diagnostics.end());
  records = std::move(read.value);
  return true;
}

}  // namespace forecourse::cli
