#pragma once

#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/site/site.h"

namespace forecourse::cli {

/// What every command that reads a station is told.
struct SiteArguments {
  std::string path;
  std::vector<std::string> sets;  ///< `line.trunk.bore="3 in"`: values changed for this run
  std::string units;              ///< "us", "si" or empty: the site's own
  bool json = false;
  std::string out;  ///< folder for files; empty: none
  bool verbose = false;
};

/// A station ready for a study, with the text its spans refer to.
struct SiteSource {
  site::Site site;
  std::vector<report::SourceText> texts;
  std::vector<Diagnostic> warnings;
};

/// The text of a site file; false, with the reason on standard error, if it cannot be read.
[[nodiscard]] bool read_site_file(const std::string& path, std::string& text);

/// Changes a text as each `--set`, or other option of its kind, asks; all that is wrong with any of them is printed to
/// standard error. False if one could not be applied.
[[nodiscard]] bool apply_sets(const std::vector<std::string>& sets, std::string& text, const char* option = "--set");

/// Reads the file, changes what `--set` asks, reads the station. Everything wrong is printed to standard
/// error; false if there was an error.
[[nodiscard]] bool load_site(const SiteArguments& arguments, SiteSource& source);

}  // namespace forecourse::cli
