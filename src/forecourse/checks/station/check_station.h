#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/checks/finding.h"
#include "forecourse/checks/rules/facts.h"
#include "forecourse/site/rules/rule_set.h"

namespace forecourse::checks {

/// The studies that requirements are held against; empty where the station has nothing for one.
struct Studied {
  std::optional<studies::FlowResult> flow;
  std::optional<studies::ContainmentResult> containment;
  std::optional<studies::TankResult> tank;
  std::optional<studies::FlotationResult> flotation;
  std::optional<studies::VaporResult> vapor;
  std::optional<studies::LedgerResult> ledger;
  std::optional<studies::LineTestResult> line_test;
  std::optional<studies::MeterResult> meter;
  std::vector<studies::DeliveryResult> deliveries;  ///< of each [[delivery]]
};

/// \param records null: none are given
[[nodiscard]] Studied study_for_checks(const site::Site& site, const site::records::Records* records,
                                       const Context& context = {});

/// Adds what the records tell: ledger, and meters where draws are among them.
void add_records(const site::Site& site, const site::records::Records& records, const Context& context, Studied& out);

/// What a station is known by: site, studies and records in one.
[[nodiscard]] Facts facts_of(const site::Site& site, const Studied& studied, const site::Date& today,
                             const site::records::Records* records);

/// Requirements that belong together: those of a rule set, or those that come with a study.
struct FindingSet {
  std::string id;  ///< "us-fire-code", or of a study "flow"
  bool of_study = false;
  std::string title;    ///< "Fire code for the forecourt", "Flow study"
  std::string edition;  ///< of a rule set
  std::vector<Finding> findings;
};

struct CheckResult {
  std::string version;
  site::Date today;
  std::vector<FindingSet> sets;       ///< without those that found nothing to check
  int requirements = 0;               ///< that were held against the station, each counted once
  int verified = 0;                   ///< of those, with a clause whose text was seen
  std::vector<DefaultUsed> defaults;  ///< of the studies
  std::vector<Diagnostic> warnings;
};

/// The built-in rule sets that a site names.
[[nodiscard]] std::vector<FindingSet> check_rule_sets(const Facts& facts);

/// Every requirement that a station lives under: those of its studies, of the rule sets it names, and of sets of its
/// own.
///
/// \param own sets of a state or an owner, which count whatever the site names; with faults they say so in `warnings`
[[nodiscard]] CheckResult check_station(const Facts& facts, const Studied& studied,
                                        std::span<const site::RuleSet> own = {});

/// All findings in one list.
[[nodiscard]] std::vector<Finding> all_findings(const CheckResult& result);

}  // namespace forecourse::checks
