#pragma once

#include <string>
#include <vector>

#include "forecourse/report/units.h"
#include "forecourse/report/word_table.h"
#include "forecourse/studies/containment/containment.h"

namespace forecourse::report {

/// One line per sump: what it holds and whether that is assured.
[[nodiscard]] WordTable sump_table(const studies::ContainmentResult& result, site::Display display, Glyphs glyphs);
/// One line per sump and inflow.
[[nodiscard]] WordTable fill_table(const studies::ContainmentResult& result, site::Display display, Glyphs glyphs);
/// Volume against height of one sump.
[[nodiscard]] WordTable height_table(const studies::ContainedSump& sump, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable joint_table(const studies::ContainmentResult& result);
[[nodiscard]] WordTable line_table(const studies::ContainmentResult& result);

/// A drip in volume an hour, a flow in volume a minute: "1.00 gph", "10.00 gpm".
[[nodiscard]] std::string inflow_words(double si, site::Display display, Glyphs glyphs);

/// "dispenser D1", "tank T1".
[[nodiscard]] std::string sump_name(const studies::ContainedSump& sump);

/// How many sumps, joints and lines are assured, in one sentence.
[[nodiscard]] std::string containment_in_short(const studies::ContainmentResult& result);

}  // namespace forecourse::report
