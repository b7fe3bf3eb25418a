#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/checks/rules/period.h"

namespace forecourse::checks {

/// How a station stands against a requirement.
enum class FindingState { meets, close, falls_short, not_determined, does_not_apply };

/// The state as printed: "meets", "close", "falls short", "not determined", "does not apply".
[[nodiscard]] const char* word(FindingState state);

/// What a value is of, which decides the unit it is shown in: pressures of vapor in inches of water, leaks by the hour,
/// ages in days, errors of a draw in cubic inches.
enum class Measured { fuel, vapor, leak, age, draw };
/// "fuel", "vapor", "leak", "age", "draw"
[[nodiscard]] const char* word(Measured of);

/// Of a requirement that comes back: when it was last done, and when it is due again.
struct Recurrence {
  std::string what;  ///< in words; of alternatives the one that the days are of
  Period every;
  std::optional<site::Date> last;  ///< its place is in the site file, or in the records; empty: there is none
  std::optional<site::Date> due;
  std::string who;                        ///< does it
  std::string sheet;                      ///< procedure sheet that leads through it; empty: none
  std::string enter;                      ///< what to enter where a day, or whether it applies, is not known
  std::string open;                       ///< why it is not known whether it applies; empty: it does
  std::vector<std::string> instead = {};  ///< alternatives that would do, in words
  std::optional<site::Date> failed = {};  ///< on which its last test failed, if none was passed since
  std::string figure = {};                ///< that tells its days; of a study the rule
  std::string clause = {};                ///< that asks for it; empty: the user's own wish
  std::string edition = {};
  bool clause_verified = false;  ///< its text was seen
};

/// A requirement held against what was computed or measured.
struct Finding {
  std::string rule;         ///< stable id: "nozzle-flow-cap"
  std::string requirement;  ///< in plain words
  std::string subject;      ///< id of the part it is about
  FindingState state = FindingState::not_determined;
  std::string clause;  ///< "40 CFR 1090.1550(b)"; empty: the user's own wish
  std::string edition;
  bool clause_verified = false;  ///< its text was seen
  std::optional<double> limit;   ///< SI
  std::optional<double> value;   ///< SI
  std::optional<double> margin;  ///< SI, positive: the limit is met by this much
  std::string unit;              ///< SI unit of the three
  Measured of = Measured::fuel;  ///< what the three are of
  SourceSpan where{};
  std::string reason;  ///< why it is not determined
  std::string change;  ///< what to change
  std::optional<Recurrence> recurrence;
};

/// State of a value that must not be below (or above) its limit: met by less than 2 % of the limit is close.
/// \param margin  how far the limit is met, positive if it is
[[nodiscard]] FindingState state_of(double margin, double limit);

}  // namespace forecourse::checks
