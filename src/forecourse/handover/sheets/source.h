#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/checks/rules/bound_rules.h"
#include "forecourse/checks/station/check_station.h"
#include "forecourse/handover/sheets/sheet.h"

namespace forecourse::handover {

/// What sheets are made of: a station, what its studies found, and what it is held against.
class SheetSource {
 public:
  SheetSource(const checks::Facts& facts, const checks::Studied& studied, const AgreedTolerances& agreed);

  const checks::Facts& facts;
  const checks::Studied& studied;
  const AgreedTolerances& agreed;
  const site::Site& site;

  /// What rules ask of a figure of a part: of a rule set that the site names, else of the recommended practices.
  [[nodiscard]] RowLimit limit(std::string_view figure) const;
  /// The clause of a finding of a study, without a limit; empty where there is no such finding.
  [[nodiscard]] RowLimit clause(std::string_view rule, std::string_view subject) const;
  /// The same with the finding's limit as the least or the most that is allowed.
  [[nodiscard]] RowLimit at_least(std::string_view rule, std::string_view subject) const;
  [[nodiscard]] RowLimit at_most(std::string_view rule, std::string_view subject) const;
  /// Who does what a rule set asks for on a figure; empty: not told.
  [[nodiscard]] std::string who(std::string_view figure) const;
  /// Whether the site names a rule set.
  [[nodiscard]] bool lives_under(std::string_view rule_set) const;

  /// Whether a clause that a study brings is of a rule set that the site names; of several in a list, whether one is.
  [[nodiscard]] bool binds(const std::string& clause) const;
  /// Whether the findings of a set bind: those of a rule set do, those of a study by their clause.
  [[nodiscard]] bool binds(std::string_view set, const std::string& clause) const;

  [[nodiscard]] const checks::CheckResult& checked() const { return checked_; }

  /// A default that is not firm and that a system of piping rests on; empty: none.
  [[nodiscard]] std::string unfirm_of(std::string_view system, bool with_heights) const;

 private:
  [[nodiscard]] const checks::BoundRequirement* requirement(std::string_view figure) const;
  /// A finding and the set that it stands in; null: there is none.
  struct Found {
    const checks::FindingSet* set = nullptr;
    const checks::Finding* finding = nullptr;
  };
  [[nodiscard]] Found found(std::string_view rule, std::string_view subject) const;

  checks::CheckResult checked_;
};

// The making of rows. Each gives one that says what, of which part, with what kind of blank.

[[nodiscard]] SheetRow amount_row(std::string id, std::string what, std::string part, std::string path, Amount amount);
[[nodiscard]] SheetRow yes_no_row(std::string id, std::string what, std::string part, std::string path,
                                  bool expected = true);
[[nodiscard]] SheetRow text_row(std::string id, std::string what, std::string part = {}, std::string path = {});
/// A step or a line that is only read.
[[nodiscard]] SheetRow told_row(std::string id, std::string what, std::string part = {}, std::string path = {});
/// Who did it and when: the end of a section.
[[nodiscard]] SheetRow signature_row(std::string what);

/// A section without rows, with a note.
[[nodiscard]] SheetSection section(const char* id, const char* title, const char* note);

/// As far from a value as was agreed.
[[nodiscard]] Tolerance around(const std::optional<double>& value, const std::optional<double>& agreed);

/// The row with a value, or with what to enter.
void set_value(SheetRow& row, const std::optional<double>& value, std::string by, std::string missing);

/// The likely value of what was entered [SI]; empty: it was not.
template <class T>
[[nodiscard]] std::optional<double> entered(const site::Maybe<T>& value) {
  return value ? std::optional<double>(value->likely.si()) : std::nullopt;
}

/// "entered: yes", "entered: no", "not entered"
[[nodiscard]] std::string fact_words(const site::Fact& fact);

// The sections of the commissioning sheet, in their order.
[[nodiscard]] SheetSection flow_section(const SheetSource& source);
[[nodiscard]] SheetSection pump_section(const SheetSource& source);
[[nodiscard]] SheetSection leak_detector_section(const SheetSource& source);
[[nodiscard]] SheetSection line_section(const SheetSource& source);
[[nodiscard]] SheetSection shear_valve_section(const SheetSource& source);
[[nodiscard]] SheetSection overfill_section(const SheetSource& source);
[[nodiscard]] SheetSection spill_section(const SheetSource& source);
[[nodiscard]] SheetSection sump_section(const SheetSource& source);
[[nodiscard]] SheetSection vent_section(const SheetSource& source);
[[nodiscard]] SheetSection stop_section(const SheetSource& source);
[[nodiscard]] SheetSection cause_and_effect_section(const SheetSource& source);
[[nodiscard]] SheetSection meter_section(const SheetSource& source);
[[nodiscard]] SheetSection bonding_section(const SheetSource& source);

// The sheets.
[[nodiscard]] Sheet commissioning_sheet(const SheetSource& source);
[[nodiscard]] Sheet thirty_day_sheet(const SheetSource& source);
[[nodiscard]] Sheet annual_sheet(const SheetSource& source);
[[nodiscard]] Sheet return_to_service_sheet(const SheetSource& source);
[[nodiscard]] Sheet delivery_card(const SheetSource& source);
[[nodiscard]] Sheet emergency_card(const SheetSource& source);

}  // namespace forecourse::handover
