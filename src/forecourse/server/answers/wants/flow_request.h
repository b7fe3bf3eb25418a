#pragma once

#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/server/answers/wants/want_reader.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/flow/read_flow_options.h"

namespace forecourse::server {

/// The members "open", "keep" and "order" of a want.
[[nodiscard]] studies::FlowTexts read_flow_want(WantReader& want);

/// The options, read and held against the station.
[[nodiscard]] Parsed<studies::FlowOptions> flow_options(const studies::FlowTexts& want, const site::Site& site);

}  // namespace forecourse::server
