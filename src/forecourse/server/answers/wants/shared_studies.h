#pragma once

#include <map>
#include <string>

#include "forecourse/base/context.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/studies/flow/flow.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::server {

/// What the wants of one asking share: the station is read once for each choice of units, and a flow or
/// an incident that several ask for is computed once.
class SharedStudies {
 public:
  /// \pre `text` and `file` outlive this.
  SharedStudies(const std::string& text, const std::string& file) : text_(text), file_(file) {}

  /// \param units "us", "si" or empty: the site's own
  [[nodiscard]] const OpenedSite& opened(const std::string& units);

  /// The flow study of a station that `opened` gave.
  [[nodiscard]] const studies::FlowResult& flow(const OpenedSite& opened, const studies::FlowOptions& options,
                                                const Context& context);

  /// The incident study of a station that `opened` gave.
  ///
  /// \param key the same for options that ask for the same
  [[nodiscard]] const studies::IncidentResult& incident(const OpenedSite& opened, const std::string& key,
                                                        const studies::IncidentOptions& options,
                                                        const Context& context);

 private:
  const std::string& text_;
  const std::string& file_;
  std::map<std::string, OpenedSite> opened_;             ///< by units
  std::map<std::string, studies::FlowResult> solved_;    ///< by what was asked
  std::map<std::string, studies::IncidentResult> told_;  ///< likewise
};

}  // namespace forecourse::server
