#pragma once

#include <string>
#include <string_view>

#include "forecourse/base/quantity_kind.h"
#include "forecourse/site/fields/rules.h"

namespace forecourse::site {

/// "length, above zero", for pages.
[[nodiscard]] std::string describe_kind(const QuantityKind& kind, const Range& range);

/// The name of a kind in a schema: "length", "pressure-difference".
[[nodiscard]] std::string kind_name(const QuantityKind& kind);

/// What ids of this kind are called: "product", "place".
[[nodiscard]] std::string_view reference_word(PartKind kind);

}  // namespace forecourse::site
