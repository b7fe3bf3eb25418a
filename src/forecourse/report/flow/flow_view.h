#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// What every writer of the flow study needs: its result picked out and put in words, the same on every sheet.

/// What must be read with any of its numbers; the first is the line that stands above them all.
[[nodiscard]] std::vector<std::string> flow_cautions();

/// A hose with what there is to say about it: "limiter holds it: alone", "above the cap: alone, one each".
struct HoseRow {
  const studies::HoseSummary* hose = nullptr;
  std::string note;
  bool marked = false;  ///< the note is one to look at: past a limit, or not determined
};

/// The hoses of one product's piping; without `system`, those that draw on several products or have no piping.
struct HoseGroup {
  const studies::SystemSummary* system = nullptr;
  std::vector<HoseRow> rows;
};

/// All hoses of the station, each once; first by piping, then the rest.
[[nodiscard]] std::vector<HoseGroup> hose_groups(const studies::FlowResult& result);

/// What the notes of a group refer to: the cap with its clause, the flow to keep. Sentences; may be empty, and
/// is when no flow of the group is determined.
[[nodiscard]] std::vector<std::string> limits_in_words(const studies::FlowResult& result, const HoseGroup& group,
                                                       site::Display display, Glyphs glyphs = Glyphs::unicode);

/// [m3/s] The cap that a rule sets for the group's hoses; empty when none does.
[[nodiscard]] std::optional<double> group_cap(const studies::FlowResult& result, const HoseGroup& group);

/// Note of one hose in one state, as above but without saying when.
[[nodiscard]] std::string hose_note(const studies::HoseFlow& hose);

/// What is not determined, each with its reason; also piping that cannot deliver. Sentences, none twice.
[[nodiscard]] std::vector<std::string> not_determined(const studies::FlowResult& result);

/// The flow alone, empty where it is not determined [m3/s].
[[nodiscard]] std::optional<double> flow_of(const std::optional<studies::SummaryFlow>& flow);

/// The flow as a number without unit, with its range where uncertain values give it one: "9.58 (9.12 to 9.90)".
[[nodiscard]] std::string flow_text(const std::optional<studies::SummaryFlow>& flow, site::Display display,
                                    Glyphs glyphs = Glyphs::unicode);

/// What there is to say about a pump: "off", "dead-headed: runs, delivers nothing", that fuel runs back through it, or
/// its speed where that is not full.
[[nodiscard]] std::string pump_note(const studies::PumpDuty& pump);

/// Status in words: "not determined: no pump feeds it"; "determined" when all is well.
[[nodiscard]] std::string status_in_words(const studies::SystemFlow& system);

/// The piping of this name in a state; null when the state does not have it.
[[nodiscard]] const studies::SystemFlow* find_system(const studies::FlowState& state, const std::string& system);

/// "No pump runs: nothing flows at any hose."; empty where one does in some state.
[[nodiscard]] std::string without_pump(const studies::FlowResult& result);

/// "D1.a", or "D1.a and 2 alike" where others of the piping give the same.
[[nodiscard]] std::string with_alike(const studies::SystemFlow& system, const studies::HoseFlow& hose);

/// The open hose that delivers least, or most; null when none is open. Of those alike to a millionth, the first.
[[nodiscard]] const studies::HoseFlow* slowest(const studies::SystemFlow& system);
[[nodiscard]] const studies::HoseFlow* fastest(const studies::SystemFlow& system);

/// A row of the pressure budget in whole steps of the last shown decimal, so that what is shown adds up as shown.
struct ShownBudgetRow {
  std::string part;
  std::string owner;
  double flow = 0.0;      ///< [m3/s]
  double velocity = 0.0;  ///< [m/s]
  long change = 0;        ///< what the part adds; negative: takes
  long left = 0;          ///< after the part
};

struct ShownBudget {
  int decimals = 0;  ///< of a step
  long added = 0;    ///< by the pumps
  std::vector<ShownBudgetRow> rows;

  /// Steps as the number they stand for.
  [[nodiscard]] double value(long steps) const;
  /// Steps as printed.
  [[nodiscard]] std::string text(long steps, Glyphs glyphs = Glyphs::unicode) const;
  /// The same with a plus sign where it adds.
  [[nodiscard]] std::string signed_text(long steps, Glyphs glyphs = Glyphs::unicode) const;
};

/// Rows of one part and owner that follow each other are one. What the pumps add is rounded to the nearest step; the
/// other rows are rounded so that all of them together take exactly that. Empty where a loss is not finite.
[[nodiscard]] ShownBudget shown_budget(const studies::HoseFlow& hose, site::Display display);

/// Defaults of one kind and value, told as one.
struct DefaultGroup {
  std::string what;  ///< "roughness of whip hose of D1.a, D1.b"
  const DefaultUsed* first = nullptr;
};

/// Defaults that share what is before their last "of", value, unit, status and source, in the order of their first.
[[nodiscard]] std::vector<DefaultGroup> grouped(const std::vector<DefaultUsed>& defaults);

/// "3 published, 1 illustrative"; empty when there are none.
[[nodiscard]] std::string count_by_status(const std::vector<DefaultUsed>& defaults);

/// Clauses, and sources of what was published or computed, sorted, none twice.
[[nodiscard]] std::vector<std::string> sources_used(const studies::FlowResult& result);

/// Name of an open set with how many hoses it opens: "all hoses open (6 hoses)".
[[nodiscard]] std::string in_words(const studies::OpenSet& set);

}  // namespace forecourse::report
