#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "forecourse/checks/rules/bound_rules.h"
#include "forecourse/decide/mend/mend.h"

namespace forecourse::decide {

/// Reads a station; empty where it has an error that its own text has not.
[[nodiscard]] std::optional<site::Site> read_changed(const MendStation& station, std::string_view text);

/// What reading a changed text warns of, and reading the station's own does not.
[[nodiscard]] std::vector<std::string> new_warnings(const MendStation& station, std::string_view text);

/// Every study that a requirement rests on.
[[nodiscard]] checks::Studied study_all(const site::Site& site, const MendStation& station, const Context& context);

/// The same after a change of the value at `path`: the study of the tanks is that of before where it does not read it.
[[nodiscard]] checks::Studied study_changed(const site::Site& site, const MendStation& station,
                                            const checks::Studied& before, std::string_view path,
                                            const Context& context);

/// Holds texts of one station against one requirement, with no more studies than it needs.
class Judge {
 public:
  Judge(const MendStation& station, MendSubject of, const Context& context);

  /// The finding for this text; empty: the text cannot be read, or has no such finding.
  [[nodiscard]] std::optional<checks::Finding> judge(std::string_view text) const;

  /// The requirements that the finding is on: one, or all of a route; none of a study.
  [[nodiscard]] const std::vector<checks::BoundRequirement>& rules() const { return rules_; }

 private:
  [[nodiscard]] std::vector<checks::Finding> findings(const site::Site& site) const;
  [[nodiscard]] checks::Studied study_some(const site::Site& site) const;

  const MendStation& station_;
  MendSubject of_;
  const Context& context_;
  std::vector<checks::BoundRequirement> rules_;
  unsigned needs_ = 0;
};

}  // namespace forecourse::decide
