#pragma once

#include <functional>

#include "forecourse/lesson/questions/make/known.h"

namespace forecourse::lesson {

/// Changes a station so that a part of it holds flow back; false: it has no such part, or its loss is entered
/// otherwise.
using Choke = std::function<bool(site::Site& site)>;

/// Something stuck in the nozzle, hose or swivel of a hose.
[[nodiscard]] Choke choke_of_hose(const KnownHose& known);
/// The filter of its inlet is clogged.
[[nodiscard]] Choke choke_of_filter(const KnownHose& known);
/// The pumps of its product turn slower.
[[nodiscard]] Choke choke_of_pump(const KnownHose& known);
/// A valve in the run that leaves the pump is nearly shut.
[[nodiscard]] Choke choke_of_trunk(const KnownHose& known);

/// The inlet that a hose draws from; null: there is none.
[[nodiscard]] const site::Inlet* inlet_of(const KnownHose& known);

}  // namespace forecourse::lesson
