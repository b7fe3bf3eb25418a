#pragma once

#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/base/source_text.h"
#include "forecourse/site/records/records.h"
#include "forecourse/site/site.h"
#include "forecourse/store/records/column.h"

namespace forecourse::store {

/// Reads all records of a station from a folder with dips.csv, deliveries.csv, sales.csv, returns.csv, provings.csv,
/// tests.csv, inspections.csv and incidents.csv (those that are there; other files are left alone), from one such file,
/// or from a store (store.h).
///
/// Everything that is wrong is told in one run, up to 200 errors a file. A row that comes twice with the same values is
/// told and counted once; one that comes twice with other values is an error. Lists are in the order of time, and
/// within one moment in that of the file; a day without a time comes before all times of it.
///
/// \param texts what was read is added to them; the places of records and diagnostics point there
/// \param site  whose tanks, hoses and products the records must name; null: any names will do
[[nodiscard]] Parsed<site::records::Records> read_records(const std::string& path, std::vector<SourceText>& texts,
                                                          const site::Site* site = nullptr);

/// Reads one file of one kind in our own form into its list, as above; diagnostics are added to those that are there.
void read_records_file(const std::string& path, const Kind& kind, std::vector<SourceText>& texts,
                       Parsed<site::records::Records>& into, const site::Site* site = nullptr);

/// Reads a text of one kind in our own form into its list; it must be the last of `texts`.
void read_records_text(const Kind& kind, const std::vector<SourceText>& texts, Parsed<site::records::Records>& into,
                       const site::Site* site = nullptr);

}  // namespace forecourse::store
