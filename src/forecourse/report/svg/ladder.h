#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/hose_flows.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::svg {

enum class LadderMark { square, disc, ring };

/// Flow of the slowest hose against the number open, in the unit of the axis; empty: not determined.
struct LadderSeries {
  std::string name;
  LadderMark mark = LadderMark::square;      ///< and its line: solid, dashed, dotted
  std::vector<std::optional<double>> flows;  ///< the first with one hose open
};

/// Which side of a limit is not wanted, and shaded.
enum class Forbidden { none, below, above };

/// A level line, named.
struct LadderLimit {
  FlowLimit at;
  Forbidden side = Forbidden::none;
};

struct LadderChart {
  std::string id;  ///< unique in the page
  double width = wide;
  std::string title;
  std::string description;
  std::string axis;  ///< "flow of the slowest hose, gpm"
  int decimals = 2;
  std::vector<LadderSeries> series;
  std::vector<LadderLimit> limits;
  bool named_at_end = false;      ///< each series with its last value at its end; else see below
  std::optional<int> worth_from;  ///< a mark at this number: "worth it from 6"
};

/// The series over the number of hoses open, marked so that of equal flows all are seen. Each is named where it is
/// farthest from the others, since with all hoses open those of one station meet; the value there stands at the end.
/// Empty without a flow.
[[nodiscard]] std::string draw(const LadderChart& chart);

}  // namespace forecourse::report::svg
