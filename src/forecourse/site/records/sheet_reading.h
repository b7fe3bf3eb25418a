#pragma once

#include "forecourse/site/records/moment.h"

namespace forecourse::site::records {

/// A line that somebody filled in on a sheet and typed back, as it was typed.
struct SheetReading {
  Moment at;
  Name sheet;    ///< id of the sheet: "commissioning"
  Name section;  ///< id of its section
  Name part;
  Name what;   ///< words of the row
  Name value;  ///< "12.2", "12.2 gpm", "yes"
  Name unit;   ///< of a bare number; of a yes or no "yes/no"
  Name by;
  Name note;
  SourceSpan where{};  ///< of the line
};

}  // namespace forecourse::site::records
