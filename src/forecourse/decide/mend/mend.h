#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/checks/station/check_station.h"

namespace forecourse::decide {

/// A station as text, with what it is held against requirements with. What it points to must outlive it.
struct MendStation {
  std::string_view text;  ///< the site file
  site::Date today;
  const site::records::Records* records = nullptr;  ///< null: none are given
  std::span<const site::RuleSet> own = {};          ///< sets of a state or an owner
  studies::FlowOptions flow = {};                   ///< of the flow study
};

/// A requirement at one part of a station.
struct MendSubject {
  std::string set;        ///< id of the rule set or the study
  bool of_study = false;  ///< a study, not a rule set
  std::string rule;
  std::string subject;
  int number = 0;  ///< among those of the set with the same rule and subject

  friend bool operator==(const MendSubject&, const MendSubject&) = default;
};

/// One value of the site file, changed.
struct MendEdit {
  std::string path;                   ///< as `site::set_value` takes it
  std::optional<std::string> before;  ///< bytes as written; empty: not entered
  std::string after;
};

/// How a finding that falls short is mended.
enum class MendWay {
  change,   ///< a size, a setting or an amount is changed
  work,     ///< something is done at the station, and recorded after it
  duty,     ///< a test, an inspection or a report is due: it is done, and its day entered
  replace,  ///< a part is fitted, or replaced by one of another figure; then that is entered
  retest,   ///< a test or a reading is made again
  none,     ///< no one value is known that mends it
};
/// "change", "work", "duty", "replace", "retest", "none"
[[nodiscard]] const char* word(MendWay way);

/// A value that was changed alone, to see whether that mends the finding.
struct MendTry {
  std::string words;  ///< what it means at the station: "raise the vent's outlet"
  MendEdit edit;      ///< to the smallest change that mends it, else the last that was tried
  bool mends = false;
  bool is_last = false;                       ///< chosen only where no other mends it
  bool is_work = false;                       ///< done at the station before it is entered
  std::optional<checks::FindingState> state;  ///< of the finding then; empty: it was not judged
  std::optional<double> value;                ///< [SI] of the finding then
  std::optional<double> share;                ///< [1] change of the value, by what it was
  std::optional<std::string> step_less;       ///< of a value in steps, one short of mending it, as it would be written
  std::string reason;                         ///< why it does not mend it, or could not be tried
};

/// A finding that a mend changes. A requirement that came or went has no state before or after.
struct MendEffect {
  MendSubject of;
  std::string requirement;
  std::string unit;
  checks::Measured measured = checks::Measured::fuel;
  std::optional<checks::FindingState> before;
  std::optional<checks::FindingState> after;
  std::optional<double> value_before;  ///< [SI]
  std::optional<double> value_after;
};

/// Whether it stands nearer to being met than before; one that went did, if it fell short.
[[nodiscard]] bool is_better(const MendEffect& effect);

/// Whether it stands further from being met than before; one that came does, unless it meets.
[[nodiscard]] bool is_worse(const MendEffect& effect);

/// The smallest change of the site that mends one finding.
struct Mend {
  MendSubject of;
  std::string requirement;
  std::string unit;
  checks::Measured measured = checks::Measured::fuel;
  checks::FindingState before = checks::FindingState::falls_short;
  std::optional<double> value_before;
  std::optional<double> limit;
  MendWay way = MendWay::none;
  std::string words;                          ///< what to do
  std::string reason;                         ///< why no edit is offered; empty where one is
  std::vector<MendEdit> edits;                ///< one; empty: none is offered
  std::optional<checks::FindingState> after;  ///< of the finding, with the edits made
  std::optional<double> value_after;
  std::optional<double> share;              ///< [1] change of the value, by what it was
  std::vector<MendEffect> effects;          ///< on the other findings whose state changes
  std::vector<std::string> warnings;        ///< of the site file with the edits made, that it did not have before
  std::optional<double> least_flow_before;  ///< [m3/s] of a hose, with all open
  std::optional<double> least_flow_after;
  std::vector<MendTry> tried;  ///< every value that was changed alone, the one of `edits` among them

  /// Done at the station before the edit records it.
  [[nodiscard]] bool is_work() const { return way == MendWay::work; }
};

/// Which findings to mend; both empty: each that falls short.
struct MendWanted {
  std::string rule;
  std::string subject;
};

struct MendResult {
  checks::CheckResult before;
  std::vector<Mend> mends;  ///< one for each finding that falls short, in their order
};

/// For each finding that falls short the smallest change of one value that mends it, and what that does to the others.
///
/// Values are tried one at a time: an amount in steps that a builder would set, a pipe in the sizes of the shelf, a
/// fact as true. A part is not moved onto another, and one that pipes lead to only where nothing else mends it. The
/// smallest is the one whose change is the least share of what it was; one that makes no other
/// finding fall short, and the site file warn of nothing new, goes before one that does. A finding is mended when it
/// meets its limit; where that is by less than 2 % of it, it is close, and not mended yet.
///
/// \fails a station of which nothing can be read has no findings and no mends
[[nodiscard]] MendResult mend_station(const MendStation& station, const MendWanted& wanted = {},
                                      const Context& context = {});

}  // namespace forecourse::decide
