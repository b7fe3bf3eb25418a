#include <algorithm>
#include <cmath>

#include "forecourse/report/compare/compare_view.h"
#include "forecourse/report/compare/incident/incident_compare_view.h"

namespace forecourse::report {
namespace {

using decide::Beside;
using decide::IncidentAmount;
using decide::IncidentComparison;
using decide::IncidentFigure;

/// The measure of a figure; a flow that only drips is shown by the hour.
Measure measure_of(IncidentAmount amount, const Beside& value, site::Display display) {
  if (amount == IncidentAmount::volume) return Measure::volume;
  constexpr double drip = 0.5;  // of the unit of a flow
  const double larger = std::max(value.a.value_or(0.0), value.b.value_or(0.0));
  return shown_value(Measure::flow, display, larger) < drip ? Measure::leak : Measure::flow;
}

std::string dash(Glyphs glyphs) { return number(std::nan(""), 0, glyphs); }

/// B less A of figures as shown, without a unit.
std::string difference(Measure measure, const Beside& value, bool differs, site::Display display, Glyphs glyphs) {
  if (!value.a || !value.b) return {};
  return difference_as_shown(shown_value(measure, display, *value.a), shown_value(measure, display, *value.b),
                             decimals(measure, display), differs, glyphs);
}

class PartsWriter {
 public:
  PartsWriter(const IncidentComparison& c, site::Display display, Glyphs glyphs)
      : c_(c), display_(display), glyphs_(glyphs) {}

  [[nodiscard]] IncidentPart figures() const {
    IncidentPart part{"Side by side", {}, {}, {}};
    WordTable table{{"What", "A", "B", "B less A"}, {false, true, true, true}, {}};
    const auto add = [&](const std::string& what, IncidentAmount amount, const Beside& value, bool differs) {
      if (!value.a && !value.b) return;
      const ShownBeside shown = shown_beside(amount, value, differs, display_, glyphs_);
      table.rows.push_back({what, shown.a, shown.b, shown.difference});
    };
    for (const decide::FigureRow& row : c_.figures) {
      add(words_of(row.figure), amount_of(row.figure), row.value, row.differs);
    }
    for (const decide::EndRow& end : c_.ends) {
      add(end.product + " out of the open end, nothing shut", IncidentAmount::flow, end.steady, end.differs);
      add(end.product + " by gravity, the pump off", IncidentAmount::flow, end.gravity, end.differs);
    }
    if (table.rows.empty()) return part;
    part.tables.emplace_back("With the barriers as they are stated", std::move(table));
    part.sentences.emplace_back(
        "A dash: it does not come to it within the time counted, or this one does not have it.");
    return part;
  }

  [[nodiscard]] IncidentPart cases() const {
    IncidentPart part{"With and without each barrier", {}, {}, {}};
    const std::string unit = ", " + unit_label(Measure::volume, display_, glyphs_);
    WordTable table{{"A" + unit, "B" + unit, "B less A", "Outside, A", "Outside, B", "Case"},
                    {true, true, true, true, true, false},
                    {}};
    for (const decide::CaseRow& row : c_.cases) {
      table.rows.push_back({volume(row.escaped.a), volume(row.escaped.b), volumes_apart(row.escaped, row.differs),
                            volume(row.outside.a), volume(row.outside.b), row.name});
    }
    if (table.rows.empty()) return part;
    part.tables.emplace_back("What escapes in each case; outside: beyond the containment", std::move(table));
    part.sentences.emplace_back("A dash: this one has no such case, or it is not determined.");
    return part;
  }

  [[nodiscard]] IncidentPart barriers() const {
    IncidentPart part{"What stands in the way", {}, {}, {}};
    WordTable table{{"Barrier", "Of", "In A", "In B", "Why"}, {false, false, false, false, false}, {}};
    for (const decide::BarrierBeside& row : c_.barriers) {
      table.rows.push_back({spaced(studies::word(row.barrier)), row.owner, state(row.a), state(row.b), why(row)});
    }
    if (table.rows.empty()) return part;
    part.sentences.emplace_back("Assured: every proof that it needs is on record. It may still fail.");
    part.tables.emplace_back("Barriers of both, and whether they can be counted on", std::move(table));
    return part;
  }

  [[nodiscard]] IncidentPart events() const {
    IncidentPart part{"What happens when", {}, {}, {}};
    const std::string unit = ", " + unit_label(Measure::volume, display_, glyphs_);
    WordTable table{
        {"After, in A", "In B", "Escaped, A" + unit, "Escaped, B" + unit, "What"}, {true, true, true, true, false}, {}};
    for (const decide::EventRow& row : c_.events) {
      table.rows.push_back(
          {time(row.time.a), time(row.time.b), volume(row.escaped.a), volume(row.escaped.b), row.words});
    }
    if (!table.rows.empty()) part.tables.emplace_back("Events of the first case", std::move(table));
    return part;
  }

  [[nodiscard]] IncidentPart holders() const {
    IncidentPart part{"Where it is when counting ends", {}, {}, {}};
    const std::string unit = ", " + unit_label(Measure::volume, display_, glyphs_);
    WordTable table{{"In or on", "A" + unit, "B" + unit, "B less A"}, {false, true, true, true}, {}};
    for (const decide::HolderRow& row : c_.holders) {
      const bool empty = row.amount.a.value_or(0.0) == 0.0 && row.amount.b.value_or(0.0) == 0.0;
      if (empty) continue;
      table.rows.push_back({studies::word(row.holder), volume(row.amount.a), volume(row.amount.b),
                            volumes_apart(row.amount, row.differs)});
    }
    if (!table.rows.empty()) part.tables.emplace_back("Amounts; of a tank and a line the change", std::move(table));
    return part;
  }

  [[nodiscard]] IncidentPart causes() const {
    IncidentPart part{"By cause", {}, {}, {}};
    const std::string unit = ", " + unit_label(Measure::volume, display_, glyphs_);
    WordTable table{{"A" + unit, "B" + unit, "B less A", "From", "To", "Product", "Cause"},
                    {true, true, true, false, false, false, false},
                    {}};
    for (const decide::CauseAmount& row : c_.causes) {
      table.rows.push_back({volume(row.amount.a), volume(row.amount.b), volumes_apart(row.amount, row.differs),
                            studies::word(row.from), studies::word(row.to), row.product, row.cause});
    }
    if (!table.rows.empty()) part.tables.emplace_back("Where every drop went, and why", std::move(table));
    return part;
  }

  [[nodiscard]] IncidentPart paired() const {
    IncidentPart part{"With drawn inputs", {}, {}, {}};
    if (!c_.paired) return part;
    const decide::PairedSpread& p = *c_.paired;
    const std::string unit = ", " + unit_label(Measure::volume, display_, glyphs_);
    WordTable table{
        {"Share of pairs below", "Escapes, B less A" + unit, "Outside, B less A" + unit}, {true, true, true}, {}};
    for (std::size_t k = 0; k < p.shares.size(); ++k) {
      table.rows.push_back(
          {number(100.0 * p.shares[k], 0, glyphs_) + " %", change(p.escaped[k]), change(p.outside[k])});
    }
    part.tables.emplace_back("Difference in " + std::to_string(p.counted) + " of " + std::to_string(p.runs) +
                                 " pairs of runs, seed " + std::to_string(p.seed),
                             std::move(table));
    part.sentences.push_back(
        "An input that both have is drawn alike in the two runs of a pair. The difference has a "
        "standard deviation of " +
        with_unit(Measure::volume, display_, p.deviation, glyphs_) + "; drawn each for itself it would be " +
        with_unit(Measure::volume, display_, p.deviation_apart, glyphs_) + ".");
    if (!p.drawn_in_both.empty()) part.items.push_back("Drawn alike: " + joined(p.drawn_in_both, ", ") + ".");
    if (!p.only_a.empty()) part.items.push_back("Drawn in A alone: " + joined(p.only_a, ", ") + ".");
    if (!p.only_b.empty()) part.items.push_back("Drawn in B alone: " + joined(p.only_b, ", ") + ".");
    return part;
  }

  [[nodiscard]] IncidentPart values() const {
    IncidentPart part{"Values that differ", {}, {}, {}};
    WordTable table{{"Key", "A", "B"}, {false, false, false}, {}};
    bool incident = false;
    for (const site::ValueDifference& v : c_.changed) {
      table.rows.push_back({v.path, v.a.empty() ? "not given" : v.a, v.b.empty() ? "not given" : v.b});
      incident = incident || v.path.starts_with("incident");
    }
    if (!table.rows.empty()) part.tables.emplace_back("Of the site files, as written", std::move(table));
    if (incident) {
      part.sentences.emplace_back(
          "The incident is that of A's file, with the options over it, for both: what B's file has under incident is "
          "left aside.");
    }
    for (const std::string& only : {only_in_words("A", c_.only_a), only_in_words("B", c_.only_b)}) {
      if (!only.empty()) part.items.push_back(only);
    }
    return part;
  }

  [[nodiscard]] IncidentPart warnings() const { return {"Warnings", {}, {}, incident_compare_warnings(c_)}; }

 private:
  [[nodiscard]] std::string volume(const std::optional<double>& si) const {
    return si ? number(Measure::volume, display_, *si, glyphs_) : dash(glyphs_);
  }
  [[nodiscard]] std::string time(const std::optional<double>& s) const {
    return s ? time_span(*s, glyphs_) : dash(glyphs_);
  }
  [[nodiscard]] std::string change(double si) const {
    return signed_number(shown_value(Measure::volume, display_, si), decimals(Measure::volume, display_), glyphs_);
  }
  [[nodiscard]] std::string volumes_apart(const Beside& value, bool differs) const {
    return difference(Measure::volume, value, differs && !same_amount(IncidentAmount::volume, value), display_,
                      glyphs_);
  }
  [[nodiscard]] std::string state(const std::optional<studies::BarrierState>& s) const {
    return s ? studies::word(s->assurance) : dash(glyphs_);
  }
  [[nodiscard]] static std::string why(const decide::BarrierBeside& row) {
    std::string a = row.a ? joined(row.a->reasons, "; ") : "";
    const std::string b = row.b ? joined(row.b->reasons, "; ") : "";
    if (a == b) return a;
    return (a.empty() ? "" : "A: " + a) + (a.empty() || b.empty() ? "" : "; ") + (b.empty() ? "" : "B: " + b);
  }

  const IncidentComparison& c_;
  site::Display display_;
  Glyphs glyphs_;
};

}  // namespace

ShownBeside shown_beside(IncidentAmount amount, const Beside& value, bool differs, site::Display display,
                         Glyphs glyphs) {
  const auto each = [&](const auto& text) {
    return ShownBeside{value.a ? text(*value.a) : dash(glyphs), value.b ? text(*value.b) : dash(glyphs), {}};
  };
  if (amount == IncidentAmount::time) {
    ShownBeside out = each([&](double s) { return time_span(s, glyphs); });
    if (const auto d = value.difference()) {
      const char* minus = glyphs == Glyphs::unicode ? "\u2212" : "-";
      const char* sign = !differs ? "" : *d > 0.0 ? "+" : minus;
      out.difference = sign + time_span(std::abs(*d), glyphs);
    }
    return out;
  }
  const Measure measure = measure_of(amount, value, display);
  ShownBeside out = each([&](double si) { return with_unit(measure, display, si, glyphs); });
  out.difference = difference(measure, value, differs && !same_amount(amount, value), display, glyphs);
  return out;
}

const char* words_of(IncidentFigure figure) {
  switch (figure) {
    case IncidentFigure::escaped:
      return "escapes";
    case IncidentFigure::outside:
      return "of it outside the containment";
    case IncidentFigure::steady_flow:
      return "flow once steady";
    case IncidentFigure::peak_flow:
      return "greatest flow";
    case IncidentFigure::isolated_at:
      return "nothing more is fed after";
    case IncidentFigure::sensor_at:
      return "fuel at the sensor after";
    case IncidentFigure::seal_at:
      return "fuel at the lowest entry seal after";
    case IncidentFigure::brim_at:
      return "fuel at the brim of the sump after";
  }
  return "";
}

std::vector<std::string> incident_compare_warnings(const IncidentComparison& comparison) {
  const auto has = [](const std::vector<Diagnostic>& all, const Diagnostic& one) {
    return std::any_of(all.begin(), all.end(), [&](const Diagnostic& d) { return d.message == one.message; });
  };
  std::vector<std::string> out;
  for (const Diagnostic& d : comparison.a.warnings) {
    out.push_back((has(comparison.b.warnings, d) ? "A and B: " : "A: ") + d.message);
  }
  for (const Diagnostic& d : comparison.b.warnings) {
    if (!has(comparison.a.warnings, d)) out.push_back("B: " + d.message);
  }
  return out;
}

std::vector<IncidentPart> incident_compare_parts(const IncidentComparison& comparison, site::Display display,
                                                 Glyphs glyphs) {
  const PartsWriter write(comparison, display, glyphs);
  std::vector<IncidentPart> parts{write.figures(), write.cases(),  write.barriers(), write.events(),  write.holders(),
                                  write.causes(),  write.paired(), write.values(),   write.warnings()};
  std::erase_if(parts, [](const IncidentPart& part) {
    return part.sentences.empty() && part.tables.empty() && part.items.empty();
  });
  return parts;
}

}  // namespace forecourse::report
