#pragma once

#include <string>

#include "forecourse/handover/sheets/sheet.h"
#include "forecourse/site/site.h"

namespace forecourse::report {

/// A section of a sheet as tables to be filled in, and below them where to sign.
///
/// Parts that are asked the same are one table, a line for each part or, where much is asked, a column for each part;
/// what is the same for all of them stands once, in the head. The rest is a list.
[[nodiscard]] std::string sheet_tables(const handover::SheetSection& section, site::Display display);

}  // namespace forecourse::report
