#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/site/pipe.h"

namespace forecourse::site {

/// How well a figure of the shelf is known. A finding that rests on one that is not `published` is not determined.
enum class ShelfStatus {
  published,        ///< its source says where
  common_practice,  ///< in general use without one source
  illustrative,     ///< invented, so that a first computation can be made
};

/// The status as written: "published", "common practice", "illustrative".
[[nodiscard]] const char* word(ShelfStatus status);

/// A pipe or hose by nominal size and construction.
struct ShelfPipe {
  std::string id;
  std::string construction;                ///< "steel pipe, Schedule 40"
  std::string nominal;                     ///< trade size as written: "1-1/2 in"
  std::optional<double> outside_diameter;  ///< [m]
  double bore = 0.0;                       ///< inside diameter [m]
  std::optional<double> wall;              ///< [m]
  double roughness = 0.0;                  ///< [m]
  ShelfStatus status = ShelfStatus::illustrative;
  std::string source;
};

/// A generic part that loses pressure. It is one figure: a k, or a loss per flow squared.
struct ShelfPart {
  std::string id;
  std::string kind;     ///< the key it is listed under in a site file: "breakaway", "shear_valve" ...
  EnteredLoss loss;     ///< as if the user had entered it; a k without bore is on the bore of its line
  double figure = 0.0;  ///< the same figure, SI
  std::string unit;     ///< of `figure`: "Pa s2/m6", or empty for a k
  ShelfStatus status = ShelfStatus::illustrative;
  std::string source;
};

/// The generic parts that are compiled in. They serve computation only: nothing on the shelf is part of a station
/// until its site file lists it.
struct Shelf {
  std::vector<ShelfPipe> pipes;
  std::vector<ShelfPart> parts;
};

/// The shelf, read once.
[[nodiscard]] const Shelf& shelf();

/// The entry with this id, null if there is none.
[[nodiscard]] const ShelfPipe* find_pipe(std::string_view id);
[[nodiscard]] const ShelfPart* find_part(std::string_view id);
/// The same, but only if the part is of this kind.
[[nodiscard]] const ShelfPart* find_part(std::string_view id, std::string_view kind);

/// All ids, to offer the nearest; of parts, those of one kind, or of all when `kind` is empty.
[[nodiscard]] std::vector<std::string_view> pipe_ids();
[[nodiscard]] std::vector<std::string_view> part_ids(std::string_view kind = {});

/// Reads a shelf from texts in the form of the folder shelf/. They are our own, so a fault in one is our
/// mistake: std::logic_error.
[[nodiscard]] Shelf read_shelf(const std::vector<std::string_view>& texts);

}  // namespace forecourse::site
