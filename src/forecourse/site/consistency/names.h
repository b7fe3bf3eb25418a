#pragma once

#include <map>
#include <string>
#include <vector>

#include "forecourse/site/consistency/findings.h"
#include "forecourse/site/fields/rules.h"

namespace forecourse::site {

/// A part of the station that can be called by its id.
struct NamedPart {
  std::string id;
  std::string noun;  ///< "tank", "pump", "inlet" ...
  SourceSpan where{};
};

/// Every id of a station by what it may stand for.
std::map<PartKind, std::vector<NamedPart>> named_parts(const Site& site);

/// Tells of ids given twice.
void check_ids(const Site& site, Findings& findings);
/// Tells of names that stand for nothing.
void check_names(const Site& site, Findings& findings);

}  // namespace forecourse::site
