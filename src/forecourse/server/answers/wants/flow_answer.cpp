#include <algorithm>

#include "forecourse/checks/flow_checks.h"
#include "forecourse/report/flow/flow_json.h"
#include "forecourse/server/answers/wants/flow_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"

namespace forecourse::server {
namespace {

using report::Json;

/// Which members of the result are asked for; empty: all.
std::vector<std::string> read_parts(WantReader& want) {
  std::vector<std::string> parts = want.texts("parts");
  for (const std::string& part : parts) {
    const std::vector<std::string>& known = flow_part_words();
    if (std::find(known.begin(), known.end(), part) != known.end()) continue;
    std::string all;
    for (const std::string& one : known) all.append(all.empty() ? "" : ", ").append(one);
    want.refuse("the result of a flow study has no '" + part + "'", "there are: " + all);
  }
  return parts;
}

/// What takes time and is not asked for is not computed.
void leave_out(const std::vector<std::string>& parts, studies::FlowOptions& options) {
  const auto asked = [&](const char* part) {
    return parts.empty() || std::find(parts.begin(), parts.end(), part) != parts.end();
  };
  options.spans = asked("spans");
  options.lines_at_rest = asked("lines_at_rest");
  options.ladders = asked("ladders") || asked("worst_states");
}

void keep_only(const std::vector<std::string>& parts, Json& document) {
  if (parts.empty()) return;
  Json kept = Json::object();
  for (const std::string& part : flow_part_words()) {
    if (std::find(parts.begin(), parts.end(), part) != parts.end()) kept[part] = std::move(document["result"][part]);
  }
  document["result"] = std::move(kept);
}

}  // namespace

const std::vector<std::string>& flow_part_words() {
  static const std::vector<std::string> words{"systems",       "hoses",   "states",      "spans",
                                              "lines_at_rest", "ladders", "worst_states"};
  return words;
}

Json flow_answer(const Asked& asked) {
  WantReader want(asked.want, flow_members);
  const std::vector<std::string> parts = read_parts(want);
  AskedFlow flow = asked_flow(asked, want);
  if (!flow.problem.is_null()) return flow.problem;
  leave_out(parts, flow.options);
  const OpenedSite& opened = *flow.opened;
  const studies::FlowResult& result = asked.shared.flow(opened, flow.options, asked.context);
  Json document = report::flow_document(result, opened.texts, checks::check_flow(opened.site, result));
  keep_only(parts, document);
  return {{"document", std::move(document)}};
}

}  // namespace forecourse::server
