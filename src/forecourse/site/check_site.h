#pragma once

#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/site.h"

namespace forecourse::site {

/// What does not fit together in a station that was read: ids given twice, names that lead nowhere, hoses that no
/// pump reaches, products that would mix, lines that can never flow, heights and distances that disagree.
/// Parts left incomplete by the reader are passed over: they were told of already.
[[nodiscard]] std::vector<Diagnostic> check_site(const Site& site);

}  // namespace forecourse::site
