#include "forecourse/report/incident/incident_view.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "forecourse/base/unit_text.h"
#include "forecourse/report/incident/incident_parts.h"

namespace forecourse::report {

using studies::IncidentResult;
using studies::Spread;

namespace {

constexpr double small_length = 0.05;  // m; below, in inches or millimeters

std::string spaced(const std::string& number, const char* unit, Glyphs glyphs) {
  return number + (glyphs == Glyphs::unicode ? "\u00a0" : " ") + unit;
}

}  // namespace

std::string shown(double si, const std::string& unit, site::Display display, Glyphs glyphs) {
  if (unit == "s") return time_span(si, glyphs);
  if (unit == "m3") return with_unit(Measure::volume, display, si, glyphs);
  if (unit == "m2") return with_unit(si < 0.01 ? Measure::small_area : Measure::area, display, si, glyphs);
  if (unit == "N") return with_unit(Measure::force, display, si, glyphs);
  if (unit == "rad") return with_unit(Measure::angle, display, si, glyphs);
  if (unit == "m3/s") {
    const bool drip = shown_value(Measure::flow, display, si) < 0.5;
    return with_unit(drip ? Measure::leak : Measure::flow, display, si, glyphs);
  }
  if (unit == "m/s") return with_unit(Measure::velocity, display, si, glyphs);
  if (unit == "m") return with_unit(si < small_length ? Measure::bore : Measure::length, display, si, glyphs);
  const bool us = display == site::Display::us;
  if (unit == "m/s2" && us) return spaced(number(from_si(si, "ft/s2"), 1, glyphs), "ft/s2", glyphs);
  if (unit == "N/m" && us) return spaced(number(from_si(si, "lbf/in"), 0, glyphs), "lbf/in", glyphs);
  return default_value({"", si, unit, {}, {}, {}}, display, glyphs);
}

std::string shown(const Spread& spread, Measure measure, site::Display display, Glyphs glyphs) {
  const std::string low = number(measure, display, spread.low, glyphs),
                    high = number(measure, display, spread.high, glyphs);
  if (spread.is_certain() || low == high) return with_unit(measure, display, spread.likely, glyphs);
  return number(measure, display, spread.low, glyphs) + " to " + with_unit(measure, display, spread.high, glyphs);
}

std::string joined(const std::vector<std::string>& all, const char* between) {
  std::string out;
  for (const std::string& one : all) out += (out.empty() ? "" : between) + one;
  return out;
}

std::string spaced(std::string word) {
  std::replace(word.begin(), word.end(), '-', ' ');
  return word;
}

std::string incident_title(const IncidentResult& result) {
  std::string kind = spaced(studies::word(result.options.kind));
  if (!kind.empty()) kind.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(kind.front())));
  return kind + (result.at.empty() ? "" : " at " + result.at);
}

namespace {

/// Whether the first run leaves no barrier out.
bool all_act(const IncidentResult& result) {
  return result.options.without.empty() && result.options.dead.empty() && result.runs.front().missing.empty();
}

/// What burned or evaporated counts as outside the containment: it did not run there.
void add_air(const studies::IncidentRun& run, site::Display display, Glyphs glyphs, std::vector<std::string>& out) {
  for (const studies::HolderAmount& held : run.amounts) {
    if (held.holder != studies::Holder::air || !(held.end > 0.0)) continue;
    out.push_back("Into the air, burned or evaporated, goes " + with_unit(Measure::volume, display, held.end, glyphs) +
                  " of that (" + run.name + ").");
  }
}

/// Cases that lie above the range, and why.
void add_beyond(const IncidentResult& result, site::Display display, Glyphs glyphs, std::vector<std::string>& out) {
  const auto most = beyond_range(result);
  if (!most) return;
  out.push_back("The table of cases goes up to " + with_unit(Measure::volume, display, *most, glyphs) +
                ", beyond the range: there a barrier that is counted on fails too.");
}

std::ptrdiff_t times(const studies::IncidentRun& run, studies::Happening what) {
  return std::count_if(run.timeline.begin(), run.timeline.end(),
                       [&](const studies::TimelineRow& row) { return row.what == what; });
}

bool happens(const studies::IncidentRun& run, studies::Happening what) { return times(run, what) > 0; }

/// What stands above an opening that nothing shuts may run out by itself.
std::string left_above(const IncidentResult& result, site::Display display, Glyphs glyphs) {
  const std::ptrdiff_t shut = times(result.runs.front(), studies::Happening::valve_shut);
  if (shut > 0 && shut >= std::ssize(result.open_ends)) return {};
  double sum = 0.0;
  for (const studies::OpenEnd& end : result.open_ends) {
    if (!end.above_opening) {
      return " Heights of pipes are not all entered: what stands above the opening, and may still run out, is not "
             "determined.";
    }
    sum += *end.above_opening;
  }
  if (!(sum > 0.0)) return {};
  return " What stands above the opening may still run out where air comes in: at most " +
         with_unit(Measure::volume, display, sum, glyphs) + " in the pipes, not counted.";
}

/// When nothing more is fed, in the first run, and why.
void add_end(const IncidentResult& result, site::Display display, Glyphs glyphs, std::vector<std::string>& out) {
  const studies::IncidentRun& run = result.runs.front();
  const std::string where =
      all_act(result) ? "Where every barrier that is there acts, " : "As asked (" + run.name + "), ";
  if (!run.isolated_at) {
    out.push_back(where + "fuel still comes out of the line when counting ends.");
    return;
  }
  const char* why = happens(run, studies::Happening::tank_empty)   ? ": the tank is empty"
                    : happens(run, studies::Happening::level_down) ? ": the tank is down to the opening"
                                                                   : "";
  out.push_back(where + "nothing more is fed to the opening after " + time_span(*run.isolated_at, glyphs) + why + "." +
                left_above(result, display, glyphs));
}

}  // namespace

std::optional<double> beyond_range(const IncidentResult& result) {
  constexpr double rounding = 1e-3;
  double most = 0.0;
  for (const studies::BarrierRow& row : result.barrier_table) most = std::max(most, row.escaped);
  return most > result.escaped.high * (1.0 + rounding) ? std::optional(most) : std::nullopt;
}

std::vector<std::string> incident_answer(const IncidentResult& result, site::Display display, Glyphs glyphs) {
  if (!result.problem.empty()) return {"Not determined: " + result.problem + "."};
  std::vector<std::string> out;
  if (!result.first_line.empty()) out.push_back("Mind: " + result.first_line + ".");
  if (result.runs.empty()) return out;
  const studies::IncidentRun& run = result.runs.front();
  out.push_back(shown(result.escaped, Measure::volume, display, glyphs) + " escapes, " +
                shown(result.to_environment, Measure::volume, display, glyphs) +
                " of it outside the containment, counted for " + time_span(run.counted, glyphs) + ".");
  add_air(run, display, glyphs, out);
  if (!result.escaped.is_certain()) {
    const bool unsure = std::any_of(result.barriers.begin(), result.barriers.end(), [](const studies::BarrierState& b) {
      return b.assurance == studies::Assurance::not_assured;
    });
    if (unsure) {
      out.push_back("The low end: every barrier that is " + std::string(all_act(result) ? "there" : "left") +
                    " acts. The high end: those that are not assured do not.");
    }
    if (result.drawn_for_range > 0) {
      out.push_back("The range takes in the spread of the inputs, from the 5 % to the 95 % of " +
                    std::to_string(result.drawn_for_range) +
                    " runs with drawn inputs: 1 in 20 lies beyond it at each end.");
    }
  }
  add_beyond(result, display, glyphs, out);
  if (result.options.kind != studies::IncidentKind::overfill) add_end(result, display, glyphs, out);
  if (run.reportable) {
    out.emplace_back(
        "More than 25 gal leave the containment: to be reported within 24 hours (40 CFR 280.53), and sooner "
        "where the local authority asks it.");
  }
  return out;
}

std::vector<IncidentPart> incident_parts(const IncidentResult& result, site::Display display, Glyphs glyphs) {
  const PartWriter write(result, display, glyphs);
  std::vector<IncidentPart> parts;
  const auto add = [&](IncidentPart part) {
    const bool empty = part.sentences.empty() && part.tables.empty() && part.items.empty();
    if (!empty) parts.push_back(std::move(part));
  };
  add(write.barriers());
  add(write.barrier_table());
  add(write.events());
  add(write.ledger());
  add(write.open_ends());
  add(write.crack());
  add(write.drive_off());
  add(write.fire());
  add(write.overfill());
  add(write.jets());
  add(write.pool());
  add(write.spread());
  add(write.cause_effect());
  add(write.return_to_service());
  add(write.inputs());
  add(write.warnings());
  return parts;
}

}  // namespace forecourse::report
