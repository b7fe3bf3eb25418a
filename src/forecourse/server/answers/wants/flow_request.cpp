#include "forecourse/server/answers/wants/flow_request.h"

namespace forecourse::server {

studies::FlowTexts read_flow_want(WantReader& want) {
  studies::FlowTexts out;
  out.open = want.id_sets("open");
  out.keep = want.text("keep");
  if (want.has("order")) {
    std::string order;
    for (const std::string& hose : want.texts("order")) order.append(order.empty() ? "" : ",").append(hose);
    out.order = order;
  }
  return out;
}

Parsed<studies::FlowOptions> flow_options(const studies::FlowTexts& want, const site::Site& site) {
  Parsed<studies::FlowOptions> out = studies::read_flow_options(want, site, studies::Asker::page);
  const std::vector<Diagnostic> problems = studies::check_options(site, out.value);
  out.diagnostics.insert(out.diagnostics.end(), problems.begin(), problems.end());
  return out;
}

}  // namespace forecourse::server
