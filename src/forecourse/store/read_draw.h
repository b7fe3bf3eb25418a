#pragma once

#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/base/source_text.h"
#include "forecourse/site/records/proving.h"
#include "forecourse/site/site.h"

namespace forecourse::store {

/// Reads draws that somebody writes by hand, each as columns of provings.csv with their values:
/// "indicated=5 gal, measure=5 gal, scale=-7 in3". A dash in a column's name stands for its underscore.
///
/// \param written one for each draw
/// \param hose    of those that name none; may be empty
/// \param today   day of those that name none: "2026-10-14"
/// \param texts   what was written is added to them; the places of draws and diagnostics point there
/// \return the draws, with everything that is wrong with any of them
[[nodiscard]] Parsed<std::vector<site::records::Proving>> read_draws(const std::vector<std::string>& written,
                                                                     const std::string& hose, const std::string& today,
                                                                     std::vector<SourceText>& texts,
                                                                     const site::Site& site);

}  // namespace forecourse::store
