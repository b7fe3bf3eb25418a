#include "forecourse/server/answers/wants/shared_studies.h"

namespace forecourse::server {
namespace {

/// The same for options that ask for the same.
std::string key_of(const site::Site& site, const studies::FlowOptions& options) {
  using report::Json;
  Json sets = Json::array();
  for (const studies::OpenSet& set : options.open_sets) sets.push_back({set.name, set.hoses});
  return Json{
      sets,          report::number_or_null(options.keep_flow), options.spans, options.lines_at_rest, options.ladders,
      options.order, site.display == site::Display::us}
      .dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace

const OpenedSite& SharedStudies::opened(const std::string& units) {
  const auto found = opened_.find(units);
  return found != opened_.end() ? found->second : opened_.emplace(units, open_site(text_, file_, units)).first->second;
}

const studies::FlowResult& SharedStudies::flow(const OpenedSite& opened, const studies::FlowOptions& options,
                                               const Context& context) {
  const std::string key = key_of(opened.site, options);
  if (const auto found = solved_.find(key); found != solved_.end()) return found->second;
  studies::FlowResult result = studies::study_flow(opened.site, options, context);
  result.warnings.insert(result.warnings.begin(), opened.warnings.begin(), opened.warnings.end());
  return solved_.emplace(key, std::move(result)).first->second;
}

const studies::IncidentResult& SharedStudies::incident(const OpenedSite& opened, const std::string& key,
                                                       const studies::IncidentOptions& options,
                                                       const Context& context) {
  if (const auto found = told_.find(key); found != told_.end()) return found->second;
  studies::IncidentResult result = studies::study_incident(opened.site, options, context);
  result.warnings.insert(result.warnings.begin(), opened.warnings.begin(), opened.warnings.end());
  return told_.emplace(key, std::move(result)).first->second;
}

}  // namespace forecourse::server
