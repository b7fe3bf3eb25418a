#pragma once

#include <functional>
#include <optional>
#include <vector>

namespace forecourse::studies {

/// What a leak detector lets through until it has opened.
struct Detector {
  double restricted = 0.0;    ///< [m3/s]
  double opening_time = 0.0;  ///< [s]
};

/// Time in which a volume is pumped when the flow depends on what has been pumped: the integral of dV / q(V).
///
/// \param marks    volumes [m3] from 0, rising, to the whole; the flow may jump at each
/// \param flow     [m3/s] at a volume pumped so far
/// \param detector lets through no more than its restricted flow until its opening time has passed; empty: none
/// \return [s]; empty where the flow ends before the volume is reached
/// \error 1e-6 of the time where the flow changes by less than half between marks
/// \source law of nature: dV = q dt
[[nodiscard]] std::optional<double> time_to_pump(const std::vector<double>& marks,
                                                 const std::function<double(double)>& flow,
                                                 const std::optional<Detector>& detector);

}  // namespace forecourse::studies
