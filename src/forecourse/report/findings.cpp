#include "forecourse/report/findings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <set>
#include <utility>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/html/parts.h"

namespace forecourse::report {
namespace {

using checks::Finding;
using checks::FindingState;

constexpr std::array<FindingState, 5> states_in_order{FindingState::falls_short, FindingState::not_determined,
                                                      FindingState::close, FindingState::meets,
                                                      FindingState::does_not_apply};

constexpr double short_length = 0.5;  // [m] limits below this are shown in inches or millimeters

std::optional<Measure> measure_of(const Finding& finding) {
  const std::string& unit = finding.unit;
  const bool vapor = finding.of == checks::Measured::vapor;
  if (vapor && unit == "m3/s") return Measure::vapor_leak;
  if (vapor && unit == "Pa") return Measure::ullage_pressure;
  if (vapor && unit == "m") return Measure::bore;
  if (finding.of == checks::Measured::leak && unit == "m3/s") return Measure::small_leak;
  if (finding.of == checks::Measured::draw && unit == "m3") return Measure::draw;
  if (unit == "m3/s") return Measure::flow;
  if (unit == "Pa") return Measure::pressure;
  if (unit == "m3") return Measure::volume;
  if (unit == "m") return finding.limit && std::abs(*finding.limit) < short_length ? Measure::bore : Measure::length;
  if (unit == "m/s") return Measure::velocity;
  if (unit == "K") return Measure::temperature;
  if (unit == "N") return Measure::force;
  return std::nullopt;
}

struct TimeUnit {
  const char* unit;
  const char* name;
  int decimals;
};

/// The unit of a time, by the size of its limit: all values of a row are in one.
TimeUnit time_unit(const Finding& finding) {
  const double limit = std::abs(finding.limit.value_or(finding.value.value_or(0.0)));
  if (finding.of == checks::Measured::age) return {"d", "days", 0};
  if (limit >= to_si(2.0, "h")) return {"h", "h", 1};
  if (limit >= to_si(2.0, "min")) return {"min", "min", 1};
  return {"s", "s", 1};
}

std::string shown(const std::optional<double>& si, const Finding& finding, site::Display display, Glyphs glyphs) {
  const double value = si.value_or(std::nan(""));
  if (const auto measure = measure_of(finding)) return number(*measure, display, value, glyphs);
  if (finding.unit == "share") return number(100.0 * value, finding.of == checks::Measured::draw ? 3 : 1, glyphs);
  if (finding.unit == "s") return number(from_si(value, time_unit(finding).unit), time_unit(finding).decimals, glyphs);
  return number(value, 2, glyphs);
}

std::string shown_unit(const Finding& finding, site::Display display, Glyphs glyphs) {
  const auto measure = measure_of(finding);
  if (finding.unit == "share") return "%";
  if (finding.unit == "s") return time_unit(finding).name;
  return measure ? unit_label(*measure, display, glyphs) : finding.unit;
}

bool belong_together(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.unit == b.unit && a.state == b.state && a.limit == b.limit && a.reason == b.reason &&
         a.change == b.change && a.clause == b.clause;
}

/// "12.25 to 12.28"; empty when no value is known.
std::string range(const FindingGroup& group, site::Display display, Glyphs glyphs) {
  std::vector<double> values;
  for (const Finding* finding : group.findings) {
    if (finding->value && std::isfinite(*finding->value)) values.push_back(*finding->value);
  }
  if (values.empty()) return {};
  const Finding& first = *group.findings.front();
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  const std::string low = shown(*least, first, display, glyphs);
  const std::string high = shown(*most, first, display, glyphs);
  return low == high ? low : low + " to " + high;
}

std::optional<double> least_margin(const FindingGroup& group) {
  std::optional<double> least;
  for (const Finding* finding : group.findings) {
    if (finding->margin && !(least && *least < *finding->margin)) least = finding->margin;
  }
  return least;
}

std::string subjects(const FindingGroup& group) {
  std::string out;
  for (const Finding* finding : group.findings) out += (out.empty() ? "" : ", ") + finding->subject;
  return out;
}

const char* verb(FindingState state, bool one) {
  switch (state) {
    case FindingState::falls_short:
      return one ? "falls short" : "fall short";
    case FindingState::close:
      return one ? "is close" : "are close";
    case FindingState::meets:
      return one ? "meets" : "meet";
    case FindingState::does_not_apply:
      return one ? "does not apply" : "do not apply";
    case FindingState::not_determined:
      return one ? "is not determined" : "are not determined";
  }
  return "are not determined";
}

std::string clause_in_words(const Finding& finding) {
  if (finding.clause.empty()) return "What was asked for, not a rule.";
  if (finding.clause == "common practice") return "Common practice; no clause is known.";
  return finding.clause + (finding.edition.empty() ? "" : ", " + finding.edition) +
         (finding.clause_verified ? "." : "; its text was not verified.");
}

/// Of a clause whose own text was not seen: its edition, and how far it was; else nothing.
std::string not_verified(const Finding& finding) {
  if (finding.clause.empty() || finding.clause_verified || finding.clause == "common practice") return {};
  return " (" + (finding.edition.empty() ? "" : finding.edition + "; ") + "text not verified)";
}

/// A row for each group of findings of one rule in one unit.
std::string rule_table(const std::vector<FindingGroup>& groups, const Finding& first, site::Display display) {
  const std::string unit = shown_unit(first, display, Glyphs::unicode);
  html::Table table{"Requirement: " + first.requirement,
                    clause_in_words(first),
                    {{"State", ""},
                     {"Of", "", false, true},
                     {"Value", unit, true},
                     {"Limit", unit, true},
                     {"Least margin", unit, true},
                     {"Why, and what to change", "", false, true}},
                    {},
                    {}};
  for (const FindingGroup& group : groups) {
    const Finding& f = *group.findings.front();
    if (f.rule != first.rule || f.unit != first.unit) continue;
    const std::string both = f.reason + (f.reason.empty() || f.change.empty() ? "" : "; ") + f.change;
    const std::string values = range(group, display, Glyphs::unicode);
    table.rows.push_back(
        {{checks::word(f.state), subjects(group), values.empty() ? "\u2013" : values,
          shown(f.limit, f, display, Glyphs::unicode), shown(least_margin(group), f, display, Glyphs::unicode), both},
         f.state == FindingState::falls_short});
  }
  return html::table(table);
}

}  // namespace

Json findings_json(const std::vector<Finding>& findings, const std::vector<SourceText>& texts) {
  Json out = Json::array();
  for (const Finding& f : findings) {
    Json one{{"rule", f.rule},
             {"requirement", f.requirement},
             {"subject", f.subject},
             {"state", checks::word(f.state)},
             {"clause", text_or_null(f.clause)},
             {"edition", text_or_null(f.edition)},
             {"clause_verified", f.clause_verified},
             {"limit", number_or_null(f.limit)},
             {"value", number_or_null(f.value)},
             {"margin", number_or_null(f.margin)},
             {"unit", f.unit},
             {"of", checks::word(f.of)},
             {"reason", text_or_null(f.reason)},
             {"change", text_or_null(f.change)}};
    const bool has_place = f.where != SourceSpan{};
    one.update(place_json(has_place ? std::optional<SourceSpan>(f.where) : std::nullopt, texts));
    out.push_back(std::move(one));
  }
  return out;
}

std::vector<FindingGroup> grouped(const std::vector<Finding>& findings) {
  std::vector<FindingGroup> groups;
  for (const FindingState state : states_in_order) {
    for (const Finding& finding : findings) {
      if (finding.state != state) continue;
      const auto same = std::find_if(groups.begin(), groups.end(), [&](const FindingGroup& group) {
        return belong_together(*group.findings.front(), finding);
      });
      if (same == groups.end()) {
        groups.push_back({{&finding}});
      } else {
        same->findings.push_back(&finding);
      }
    }
  }
  return groups;
}

std::string in_words(const FindingGroup& group, site::Display display, Glyphs glyphs) {
  const Finding& first = *group.findings.front();
  std::string out = subjects(group) + ": " + first.requirement;
  const std::string values = range(group, display, glyphs);
  const std::string shown_as = shown_unit(first, display, glyphs);
  const std::string unit = shown_as.empty() ? "" : " " + shown_as;
  if (!values.empty()) out += "; " + values + unit;
  if (first.limit) {
    out += std::string(values.empty() ? "; " : ", ") + "limit " + shown(first.limit, first, display, glyphs) + unit;
  }
  if (!first.clause.empty()) out += "; " + first.clause + not_verified(first);
  if (!first.reason.empty()) out += "; " + first.reason;
  if (!first.change.empty()) out += "; " + first.change;
  return out + ".";
}

std::string value_in_words(double si, const Finding& finding, site::Display display, Glyphs glyphs) {
  const std::string unit = shown_unit(finding, display, glyphs);
  return shown(si, finding, display, glyphs) + (unit.empty() ? "" : " " + unit);
}

std::string count_by_state(const std::vector<Finding>& findings) {
  std::string out;
  for (const FindingState state : states_in_order) {
    const auto count =
        std::count_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.state == state; });
    if (count > 0) out += (out.empty() ? "" : ", ") + std::to_string(count) + " " + verb(state, count == 1);
  }
  return out.empty() ? "none" : out;
}

std::string findings_table(const std::string& caption, const std::string& note, const std::vector<Finding>& findings,
                           site::Display display) {
  html::Table table{caption,
                    note,
                    {{"State", ""},
                     {"Of", "", false, true},
                     {"Requirement", "", false, true},
                     {"Value", "", true},
                     {"Limit", "", true},
                     {"Least margin", "", true},
                     {"Clause", "", false, true},
                     {"Why, and what to change", "", false, true}},
                    {},
                    {}};
  const auto with_unit = [&](const std::string& value, const Finding& f) {
    const std::string unit = shown_unit(f, display, Glyphs::unicode);
    return value.empty() || unit.empty() ? value : value + " " + unit;
  };
  for (const FindingGroup& group : grouped(findings)) {
    const Finding& f = *group.findings.front();
    const auto amount = [&](const std::optional<double>& si) {
      return si ? with_unit(shown(si, f, display, Glyphs::unicode), f) : std::string();
    };
    const std::string both = f.reason + (f.reason.empty() || f.change.empty() ? "" : "; ") + f.change;
    table.rows.push_back(
        {{checks::word(f.state), subjects(group), f.requirement, with_unit(range(group, display, Glyphs::unicode), f),
          amount(f.limit), amount(least_margin(group)), f.clause + not_verified(f), both},
         f.state == FindingState::falls_short});
  }
  return html::table(table);
}

std::string findings_html(const std::vector<Finding>& findings, site::Display display) {
  if (findings.empty()) return {};
  std::string out = html::heading(2, "Requirements");
  out += html::paragraph(
      "Of the findings, " + count_by_state(findings) +
      ". Close: the limit is met by less than the spread of uncertain values, or by less than 2 % of it where "
      "none is stated. Not determined is never a pass.");
  const std::vector<FindingGroup> groups = grouped(findings);
  std::set<std::pair<std::string, std::string>> told;
  for (const Finding& finding : findings) {
    if (!told.emplace(finding.rule, finding.unit).second) continue;
    out += rule_table(groups, finding, display);
  }
  return out;
}

}  // namespace forecourse::report
