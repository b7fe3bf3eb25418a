#include "forecourse/site/consistency/rule_names.h"

#include <algorithm>

#include "forecourse/site/rules/read_rule_set.h"
#include "forecourse/site/text/read_run.h"

namespace forecourse::site {

void check_rule_names(const Site& site, Findings& findings) {
  if (site.rules.empty()) return;
  std::vector<std::string_view> known;
  for (const RuleSet& set : built_in_rule_sets()) known.push_back(set.id.text);
  for (const Name& name : site.rules) {
    if (std::find(known.begin(), known.end(), name.text) != known.end()) continue;
    findings.error(name.where, "there is no rule set '" + name.text + "'",
                   offer(name.text, known, "there are") + " (a set of your own goes to checks with --rules)");
  }
}

}  // namespace forecourse::site
