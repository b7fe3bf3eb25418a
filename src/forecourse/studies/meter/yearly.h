#pragma once

#include "forecourse/site/records/records.h"
#include "forecourse/studies/meter/meter.h"

namespace forecourse::studies {

/// What a hose sells in a year: as entered, else what it sold behind its first day on record, scaled.
/// \source closed form
[[nodiscard]] MeterYear year_of(const std::string& hose, const site::records::Records& records,
                                const MeterOptions& options);

/// [m3] The totalizer of a hose on or before a day; empty: none is on record.
[[nodiscard]] std::optional<double> total_on(const std::string& hose, Day day, const site::records::Records& records);

}  // namespace forecourse::studies
