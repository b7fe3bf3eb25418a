#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// One thing that moves the slowest open hose, or of which it is not known whether it does, in words.
struct SpanRow {
  std::string what;  ///< "level in T1"
  std::string from;  ///< its low end, with its unit; may be empty
  std::string to;
  std::optional<double> at_low;  ///< [m3/s] of the slowest open hose
  std::optional<double> at_likely;
  std::optional<double> at_high;
  double least = 0.0;  ///< [m3/s] of the three
  double most = 0.0;
  std::string change;  ///< "−0.45 to +0.12" against what is likely, in the unit of a flow; "none"
  std::string note;
  std::string reason;  ///< why it is not determined and what to enter; empty when it is
};

/// What moves the flows in the open set that was asked first: the widest first, then what is not determined, alike
/// reasons together.
[[nodiscard]] std::vector<SpanRow> span_rows(const studies::FlowResult& result, site::Display display,
                                             Glyphs glyphs = Glyphs::unicode);

/// Sentences that go with the rows: what moves no flow, how far the ranges can be trusted.
[[nodiscard]] std::vector<std::string> spans_in_words(const studies::FlowResult& result);

}  // namespace forecourse::report
