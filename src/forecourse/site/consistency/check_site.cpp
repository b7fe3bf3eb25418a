#include "forecourse/site/check_site.h"

#include "forecourse/site/consistency/barriers.h"
#include "forecourse/site/consistency/controls.h"
#include "forecourse/site/consistency/deliveries.h"
#include "forecourse/site/consistency/heights.h"
#include "forecourse/site/consistency/names.h"
#include "forecourse/site/consistency/reach.h"
#include "forecourse/site/consistency/rule_names.h"
#include "forecourse/site/consistency/supply.h"
#include "forecourse/site/consistency/tanks.h"

namespace forecourse::site {

std::vector<Diagnostic> check_site(const Site& site, const std::vector<SourceSpan>& half_read) {
  Findings findings;
  const LineGraph graph(site);
  const Supply supply(site, graph);
  check_ids(site, findings);
  check_names(site, findings);
  check_reach(site, graph, supply, findings);
  check_lines(site, graph, supply, findings);
  check_heights(site, supply, findings);
  check_lengths(site, half_read, findings);
  check_siphons(site, findings);
  check_tanks(site, findings);
  check_controls(site, supply, findings);
  check_barriers(site, findings);
  check_deliveries(site, findings);
  check_rule_names(site, findings);
  return std::move(findings.all);
}

}  // namespace forecourse::site
