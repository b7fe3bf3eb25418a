#pragma once

#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/report/json_document.h"
#include "forecourse/server/answers/wants/study_answers.h"
#include "forecourse/server/answers/wants/want_reader.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/flow/read_flow_options.h"

namespace forecourse::server {

/// The members "open", "keep" and "order" of a want.
[[nodiscard]] studies::FlowTexts read_flow_want(WantReader& want);

/// A station and the options of a flow study of it; or why there is none.
struct AskedFlow {  // NOLINT(bugprone-exception-escape): as OpenedSite
  const OpenedSite* opened = nullptr;
  studies::FlowOptions options;
  report::Json problem;  ///< null: it can be studied
};

/// Reads the members of a want that say which flows are asked for, and holds them against the station. What else the
/// reader was asked for counts too.
[[nodiscard]] AskedFlow asked_flow(const Asked& asked, WantReader& want);

}  // namespace forecourse::server
