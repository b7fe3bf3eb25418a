#pragma once

#include <string>
#include <vector>

#include "forecourse/checks/station/check_station.h"
#include "forecourse/handover/sheets/sheet.h"

namespace forecourse::handover {

/// The sheets that are handed over with a station: its figures beside blanks that are filled in by hand.
///
/// A figure that was not entered or not determined says so; none is made up.
///
/// \param facts of the station and `studied`, for the day on which the sheets are made
[[nodiscard]] SheetPack make_sheets(const checks::Facts& facts, const checks::Studied& studied,
                                    const SheetOptions& options);

/// What every sheet says of itself.
[[nodiscard]] std::vector<std::string> sheet_cautions();

/// "Stop the pump.", "Clear people away.", "Call the fire service."
[[nodiscard]] std::vector<std::string> first_in_an_emergency();

}  // namespace forecourse::handover
