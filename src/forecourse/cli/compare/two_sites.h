#pragma once

#include <string>
#include <vector>

#include "forecourse/cli/commands.h"

namespace forecourse::cli {

/// Two stations with the texts they were read from, A's first. The name of a text is how it is told in a report.
struct TwoSites {
  site::Site a;
  site::Site b;
  std::vector<report::SourceText> texts;
  std::vector<Diagnostic> warnings;
};

/// Reads both, B with what `--set` asks; what is wrong with either is told in one list on standard error. False if
/// there was an error.
[[nodiscard]] bool load_two_sites(const CompareArguments& arguments, TwoSites& sites);

}  // namespace forecourse::cli
