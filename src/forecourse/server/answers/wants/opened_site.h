#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/server/answers/wants/want_reader.h"
#include "forecourse/site/site.h"

namespace forecourse::server {

/// A station ready for a study, with the text its spans refer to.
struct OpenedSite {  // NOLINT(bugprone-exception-escape): moving JSON throws nothing, though its checks look as if
  site::Site site;
  std::vector<report::SourceText> texts;
  std::vector<Diagnostic> warnings;
  report::Json problem;  ///< null: it can be studied
};

/// Reads a site file for a study; one with errors is refused as the commands refuse it.
///
/// \param units "us", "si" or empty: the site's own
[[nodiscard]] OpenedSite open_site(const std::string& text, const std::string& file, const std::string& units);

/// The member of every want that chooses the units, "us" or "si".
[[nodiscard]] std::string read_units(WantReader& want);

/// The refusal of a station without hoses; null where it has some.
[[nodiscard]] report::Json without_hose(const site::Site& site);

}  // namespace forecourse::server
