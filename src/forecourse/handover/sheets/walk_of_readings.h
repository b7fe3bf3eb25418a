#pragma once

#include "forecourse/handover/sheets/readings.h"

namespace forecourse::handover {

/// The walk-throughs that readings make up, as records: of each day on which every row that the rule of the
/// walk-through asks for was answered, with who walked. One is in order where each of these rows is.
///
/// \param pack with the sheets that the readings were held against
[[nodiscard]] std::vector<RecordRow> walks_of(const ReadingsTold& told, const SheetPack& pack);

/// What such a record says was looked for: everything.
inline constexpr const char* whole_walk = "the whole walk-through";

/// As records write a time of day [s since midnight]: "06:30".
[[nodiscard]] std::string clock_text(double since_midnight);

/// As records call a single row of a sheet: "30-day row", "annual row"; of a sheet that is no walk-through as the
/// sheet.
[[nodiscard]] std::string row_kind(SheetKind kind);

}  // namespace forecourse::handover
