#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/flow/flow.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::studies {

/// What a flow study is asked for, as written.
struct FlowTexts {
  std::vector<std::string> open;                    ///< as `read_open_set` takes each
  std::string keep = {};                            ///< a flow with its unit
  std::optional<std::string> order = std::nullopt;  ///< hose ids parted by commas; empty: not asked
};

/// Ids parted by commas, without the blanks around them.
[[nodiscard]] std::vector<std::string> read_ids(const std::string& text);

/// The open set that a text asks for: ids parted by commas, "all", "each" or "none".
[[nodiscard]] OpenSet read_open_set(const std::string& text, const site::Site& site);

/// A flow to keep, above zero [m3/s]; an empty text asks for none.
[[nodiscard]] Parsed<std::optional<double>> read_keep(const std::string& text, Asker asker);

/// The options that texts ask for. Whether the hoses are there is told by `check_options`.
[[nodiscard]] Parsed<FlowOptions> read_flow_options(const FlowTexts& texts, const site::Site& site, Asker asker);

}  // namespace forecourse::studies
