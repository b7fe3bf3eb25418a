#pragma once

#include <optional>

#include "forecourse/site/site.h"

// What is gasoline at a station, for the rules that bind by it.

namespace forecourse::studies {

/// The product of an id, or null.
[[nodiscard]] const site::Product* product_of(const site::Site& site, const site::Name& id);

/// Whether a product is sold as gasoline; empty: its kind is not entered, or is none of those with a name.
[[nodiscard]] std::optional<bool> is_gasoline(const site::Product* product);

/// Of the gasolines in the tanks [m3] a month; empty: there is none, or that of one is not entered, or whether one is a
/// gasoline is not known.
[[nodiscard]] std::optional<double> gasoline_throughput(const site::Site& site);

}  // namespace forecourse::studies
