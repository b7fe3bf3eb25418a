#pragma once

#include <string>
#include <vector>

#include "forecourse/cli/run.h"
#include "forecourse/cli/site_source.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::cli {

/// What the flow study is told on the command line.
struct FlowArguments {
  SiteArguments site;
  std::vector<std::string> open;  ///< each a set of hose ids parted by commas, "all" or "each"
  std::string keep;               ///< a flow with its unit
  std::string command;            ///< as typed, for the report
};

/// All studies of a station: summary on the screen, report into `--out`.
[[nodiscard]] Exit study_command(const FlowArguments& arguments);

/// The flow study alone.
[[nodiscard]] Exit flow_command(const FlowArguments& arguments);

/// The generic parts that a site file can name.
[[nodiscard]] Exit shelf_command(const std::string& kind, bool json);

}  // namespace forecourse::cli
