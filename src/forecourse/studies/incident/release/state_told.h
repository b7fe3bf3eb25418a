#pragma once

#include <array>
#include <span>
#include <vector>

#include "forecourse/studies/incident/incident.h"
#include "forecourse/studies/incident/release/layout.h"

namespace forecourse::studies::release {

/// What a moment of a run tells. `amounts` [m3] per compartment and `flows` [m3/s] per link are those of its sequence.

inline constexpr std::array<Holder, 9> all_holders{Holder::tank, Holder::line,        Holder::dispenser,
                                                   Holder::sump, Holder::slab,        Holder::ground,
                                                   Holder::air,  Holder::interceptor, Holder::vehicle};

[[nodiscard]] Holder holder_of(const Layout& layout, int compartment);

/// Amounts per holder, in the order of `all_holders` [m3].
[[nodiscard]] std::vector<double> held(const Layout& layout, std::span<const double> amounts);

/// Outside the piping, wherever it went [m3].
[[nodiscard]] double escaped_of(const Layout& layout, std::span<const double> amounts);

/// Out of the line and out of what lies above it [m3/s].
[[nodiscard]] double escaping(const Layout& layout, std::span<const double> flows);

/// Out of the line alone [m3/s].
[[nodiscard]] double out_of_line(const Layout& layout, std::span<const double> flows);

/// One flow of all ends [m3/s].
[[nodiscard]] double total(const Layout& layout, std::span<const double> flows, Layout::OfEnd which);

}  // namespace forecourse::studies::release
