#pragma once

#include <vector>

#include "forecourse/base/source_text.h"
#include "forecourse/store/store.h"

namespace forecourse::store {

/// All rows of one kind as CSV in our own form, values as they were typed; an import of it gives the same rows.
[[nodiscard]] std::string export_kind(Store& store, const Kind& kind);

/// A text for each kind of which there are rows, named as its file: "dips.csv".
[[nodiscard]] std::vector<SourceText> export_records(Store& store);

}  // namespace forecourse::store
