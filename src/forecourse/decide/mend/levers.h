#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/decide/mend/grid.h"
#include "forecourse/decide/mend/mend.h"

namespace forecourse::decide {

/// What a lever's value is, which decides how it is stepped through.
enum class LeverKind {
  amount,  ///< on a grid
  size,    ///< bore or nominal size of a pipe, through those of the shelf
  place,   ///< position on plan, moved along `x` and `y`
  word,    ///< `value`: a fact, a kind, a list
};

enum class Sense { more, less, either };

/// An entered value that a figure reads, and which way it helps.
struct Lever {
  std::string path;   ///< as `site::set_value` takes it; of a size that of its pipe
  std::string words;  ///< "raise the vent's outlet"
  LeverKind kind = LeverKind::amount;
  Sense sense = Sense::more;
  Grid grid = Grid::inch;
  bool one_to_one = false;                     ///< the figure changes by no more than the value
  std::optional<double> start = std::nullopt;  ///< [SI] from where to step where none is entered; empty: no lever then
  double x = 0.0;                              ///< of a place [1]
  double y = 0.0;
  bool last = false;       ///< taken only where no other mends it: a part that pipes lead to is moved
  std::string value = {};  ///< of a word, the bytes to set
};

/// How a finding can be mended, and what can be tried.
struct Levers {
  MendWay way = MendWay::none;
  std::string words;   ///< what to do, where no lever says it better
  std::string reason;  ///< why no edit is offered, where there is no lever
  std::vector<Lever> levers;
};

/// What levers are looked for.
struct LeverQuestion {
  const site::Site& site;
  const checks::Studied& studied;
  const checks::Finding& finding;
  std::string of;        ///< id of the figure, or of a study's own requirement "vents|vent-height"
  bool is_day = false;   ///< the figure is one of days
  std::string change;    ///< what the requirement says that is to be changed
  std::string who = {};  ///< of a recurring duty: who does it
};

/// How a finding on a figure is mended where no lever mends it; by what is told of it.
[[nodiscard]] MendWay way_without_lever(std::string_view of);
[[nodiscard]] std::string reason_of(MendWay way);

[[nodiscard]] Levers levers_of(const LeverQuestion& question);

}  // namespace forecourse::decide
