#include "forecourse/site/check_site.h"

#include "forecourse/site/consistency/heights.h"
#include "forecourse/site/consistency/names.h"
#include "forecourse/site/consistency/reach.h"

namespace forecourse::site {

std::vector<Diagnostic> check_site(const Site& site) {
  Findings findings;
  const LineGraph graph(site);
  check_ids(site, findings);
  check_names(site, findings);
  check_reach(site, graph, findings);
  check_lines(site, graph, findings);
  check_heights(site, graph, findings);
  check_lengths(site, findings);
  check_siphons(site, findings);
  return std::move(findings.all);
}

}  // namespace forecourse::site
