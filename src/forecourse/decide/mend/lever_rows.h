#pragma once

#include <span>
#include <string_view>

#include "forecourse/decide/mend/levers.h"
#include "forecourse/decide/mend/part_paths.h"

namespace forecourse::decide {

/// A value of the part that a figure is told of.
struct AmountRow {
  std::string_view of;  ///< a figure, or "vents|vent-height" of a study's own requirement
  PartOf part = PartOf::station;
  std::string_view key;  ///< below the part
  Sense sense = Sense::more;
  Grid grid = Grid::inch;
  std::string_view words;
  bool one_to_one = true;
};

/// A fact that is true once something is done.
struct FactRow {
  std::string_view of;
  PartOf part = PartOf::station;
  std::string_view key;
  std::string_view value;       ///< bytes to set
  std::string_view words = {};  ///< what is done; empty: what the requirement says that is to be changed
};

/// A part that is moved on plan.
struct PlaceRow {
  std::string_view of;
  PartOf part = PartOf::station;
  bool own = true;  ///< the part of the finding; else each of them in turn
  std::string_view words;
};

/// A pipe that is laid wider.
struct SizeRow {
  std::string_view of;
  PartOf part = PartOf::station;
  std::string_view key;
  std::string_view words;
};

/// What no value of the site file mends.
struct OtherRow {
  std::string_view of;
  MendWay way = MendWay::none;
};

[[nodiscard]] std::span<const AmountRow> amount_rows();
[[nodiscard]] std::span<const FactRow> fact_rows();
[[nodiscard]] std::span<const PlaceRow> place_rows();
[[nodiscard]] std::span<const SizeRow> size_rows();
[[nodiscard]] std::span<const OtherRow> other_rows();

}  // namespace forecourse::decide
