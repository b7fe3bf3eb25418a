#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/handover/kit/kit.h"

namespace forecourse::handover {

/// What a schedule tells of one part as it is entered.
struct PartWords {
  std::string what;
  std::vector<KitSize> sizes;
  std::optional<double> rating;  ///< [Pa] gauge
  std::vector<std::string> listed_to;
  std::optional<double> length;  ///< [m] of pipe
};

[[nodiscard]] PartWords words_of(const StationPart& part, const PartKind& kind);

/// Whether a part is a hanging hose set whose parts are listed one by one.
[[nodiscard]] bool is_set_in_parts(const StationPart& part);

/// The pipe that a part of its kind is; null: none.
[[nodiscard]] const site::Pipe* pipe_of(const StationPart& part);

/// "steel pipe, Schedule 40, double wall"; of what is not entered nothing
[[nodiscard]] std::string construction_of(const StationPart& part);

/// The same for an order, which needs to be told what is missing: "pipe, construction not entered".
[[nodiscard]] std::string pipe_to_order(const StationPart& part);

/// Nominal size where it is entered, else the bore.
[[nodiscard]] std::vector<KitSize> sizes_of(const site::Pipe& pipe);

/// Whether a pipe is of metal, as entered; empty: not known.
[[nodiscard]] std::optional<bool> is_metal(const site::Pipe& pipe);

}  // namespace forecourse::handover
