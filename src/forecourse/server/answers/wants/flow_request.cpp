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

AskedFlow asked_flow(const Asked& asked, WantReader& want) {
  const studies::FlowTexts texts = read_flow_want(want);
  const OpenedSite& opened = asked.shared.opened(read_units(want));
  if (!want.good()) return {nullptr, {}, want.problem()};
  if (!opened.problem.is_null()) return {nullptr, {}, opened.problem};
  if (report::Json none = without_hose(opened.site); !none.is_null()) return {nullptr, {}, std::move(none)};
  Parsed<studies::FlowOptions> options = studies::read_flow_options(texts, opened.site, studies::Asker::page);
  std::vector<Diagnostic> problems = studies::check_options(opened.site, options.value);
  problems.insert(problems.begin(), options.diagnostics.begin(), options.diagnostics.end());
  if (has_error(problems)) return {nullptr, {}, refused(problems)};
  return {&opened, std::move(options.value), {}};
}

}  // namespace forecourse::server
