#pragma once

#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/site.h"

namespace forecourse::site {

/// What does not fit together in a station that was read: ids given twice, names that lead nowhere, hoses that no
/// pump reaches, products that would mix, lines that can never flow, heights and distances that disagree.
///
/// \param half_read places of tables in which a value could not be read: what these lack is not told again
[[nodiscard]] std::vector<Diagnostic> check_site(const Site& site, const std::vector<SourceSpan>& half_read = {});

}  // namespace forecourse::site
