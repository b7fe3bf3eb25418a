#pragma once

#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/base/source_text.h"
#include "forecourse/site/records/sheet_reading.h"

namespace forecourse::store {

/// Columns of the file into which the readings of sheets are typed, in the order in which it is written. `computed` is
/// only there to be read by people.
[[nodiscard]] const std::vector<std::string>& sheet_columns();

/// Reads what was typed into such a file, the last of `texts`. Lines without a value are passed over; everything that
/// is wrong is told with its place.
[[nodiscard]] Parsed<std::vector<site::records::SheetReading>> read_sheet_readings(
    const std::vector<SourceText>& texts);

}  // namespace forecourse::store
