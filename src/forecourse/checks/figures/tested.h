#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/checks/figures/figure.h"
#include "forecourse/checks/rules/period.h"

namespace forecourse::checks {

using MaybeDay = std::optional<site::Date>;

/// The later of two days, as far as they are known.
[[nodiscard]] MaybeDay later_of(const MaybeDay& a, const MaybeDay& b);

/// Tests of one kind in the records; `parts` are ids by which they may call the part.
struct Recorded {
  site::records::TestKind kind;
  std::vector<std::string> parts;
};

/// Looks of one kind in the inspections of the records: each thing looked at names its part.
struct Looked {
  std::string_view kind;  ///< of the inspection: "interstice", "walls", "wells", "inside"
  std::vector<std::string> parts;
  bool must_be_in_order = false;  ///< a look that found something wrong proves nothing
};

/// Days of those that were passed, in the order of time. A test of which it is not stated that it was passed proves
/// nothing and is left out.
[[nodiscard]] std::vector<site::Date> recorded_days(const Facts& facts, const Recorded& which);

/// A figure of a part: the later of the day entered and those of passed tests in the records. There is none where the
/// last test on record failed, and none was entered for a later day: `failed` is the day of that.
[[nodiscard]] FigureAt last_tested(const Facts& facts, std::string subject, SourceSpan where, const MaybeDay& entered,
                                   const Recorded& which, std::string enter);

/// A figure of a part: the later of the day entered and those of looks in the records.
[[nodiscard]] FigureAt last_looked(const Facts& facts, std::string subject, SourceSpan where, const MaybeDay& entered,
                                   const Looked& which, std::string enter);

/// The last trip test of a shear valve, with none where the last on record failed; records call the valve by its inlet.
[[nodiscard]] FigureAt shear_valve_trip(const Facts& facts, const std::string& inlet, const site::ShearValve& valve);

/// A figure of a part: time [s] from a day to the first of others that does not lie before it. Where all of these lie
/// before it, the time that has passed, once it is longer than allowed; until then it is not known.
[[nodiscard]] FigureAt time_to_first(const Facts& facts, std::string subject, const site::Date& from,
                                     const std::vector<MaybeDay>& others, const Period& allowed, std::string enter);

[[nodiscard]] double seconds_of_days(int days);

}  // namespace forecourse::checks
