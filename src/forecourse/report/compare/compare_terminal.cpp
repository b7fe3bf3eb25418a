#include "forecourse/report/compare/compare_terminal.h"

#include <algorithm>

#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

using decide::Comparison;
using terminal::Table;

constexpr std::size_t longest_list = 12;  // of changed values, unless all are asked for

class Summary {
 public:
  Summary(const Comparison& c, site::Display display, const terminal::Style& style, const CompareFacts& facts)
      : c_(c), display_(display), style_(style), facts_(facts), page_(style) {}

  std::string tell() {
    const std::string& name = c_.a.name.empty() ? c_.b.name : c_.a.name;
    page_.title((name.empty() ? "Station without a name" : name) + ": A against B");
    page_.paragraph("A: " + facts_.label_a);
    page_.paragraph("B: " + facts_.label_b);
    tell_answer();
    tell_reservations();
    tell_changed();
    tell_findings();
    for (const decide::Worth& worth : c_.worth) {
      const bool same = std::all_of(worth.steps.begin(), worth.steps.end(), [](const auto& s) { return s.nothing; });
      if (style_.verbose || !same) tell_ladder(worth);
    }
    tell_rows();
    tell_end();
    return page_.text();
  }

 private:
  [[nodiscard]] Glyphs glyphs() const { return style_.utf8 ? Glyphs::unicode : Glyphs::ascii; }

  void tell_answer() {
    page_.heading("Is B worth it");
    for (const decide::Worth& worth : c_.worth) {
      std::string text;
      for (const std::string& sentence : worth_in_words(worth, display_, glyphs())) {
        text += (text.empty() ? "" : " ") + sentence;
      }
      if (!text.empty()) page_.item(text);
    }
    if (c_.worth.empty()) page_.item("Not determined: there is no piping that both have with hoses that can be fed.");
    for (const std::string& text : beside_worth_in_words(c_, display_, glyphs())) page_.item(text);
    std::string unchanged;
    for (const std::string& one : unchanged_in_words(c_)) unchanged += (unchanged.empty() ? "" : "; ") + one;
    if (!unchanged.empty()) page_.item("B does not change: " + unchanged + ".");
    if (!c_.worth.empty()) page_.remark(worth_meaning(c_));
  }

  void tell_reservations() {
    const std::vector<std::string> reasons = undetermined_in_words(c_);
    if (reasons.empty()) return;
    page_.heading("Not determined, or with a reservation");
    for (const std::string& reason : reasons) page_.item(reason);
  }

  void tell_changed() {
    const bool none = c_.changed.empty() && c_.only_a.empty() && c_.only_b.empty();
    page_.heading(none ? "Values that differ: none" : "Values that differ");
    Table table{{{"Key"}, {"A", false, true}, {"B", false, true}}, {}};
    const std::size_t shown = style_.verbose ? c_.changed.size() : std::min(c_.changed.size(), longest_list);
    for (std::size_t i = 0; i < shown; ++i) {
      const site::ValueDifference& v = c_.changed[i];
      table.rows.push_back({v.path, v.a.empty() ? "not given" : v.a, v.b.empty() ? "not given" : v.b});
    }
    if (!table.rows.empty()) page_.table(table);
    if (shown < c_.changed.size()) {
      page_.remark(std::to_string(c_.changed.size() - shown) + " more with --verbose.");
    }
    for (const std::string& only : {only_in_words("A", c_.only_a), only_in_words("B", c_.only_b)}) {
      if (!only.empty()) page_.item(only);
    }
  }

  void tell_findings() {
    if (c_.findings.empty() && c_.findings_alike == 0 && c_.dead_heads.empty()) return;
    page_.heading("Requirements that stand otherwise: " + std::to_string(c_.findings.size()) +
                  "; in the same state: " + std::to_string(c_.findings_alike));
    for (const decide::FindingChange& change : c_.findings) page_.item(in_words(change));
    for (const decide::DeadHead& dead : c_.dead_heads) page_.item(in_words(dead));
  }

  void tell_ladder(const decide::Worth& worth) {
    const std::string unit = unit_label(Measure::flow, display_, glyphs());
    page_.heading("The slowest hose against the number open, " + worth.system + ", " + unit);
    Table table{{{"Open", true}, {"A", true}, {"B", true}, {"%", true}, {"", false, true}}, {}};
    for (const decide::WorthStep& s : worth.steps) {
      table.rows.push_back({std::to_string(s.open), number(Measure::flow, display_, s.slowest_a, glyphs()),
                            number(Measure::flow, display_, s.slowest_b, glyphs()),
                            (s.gain > 0.0 ? "+" : "") + number(100.0 * s.gain, 1, glyphs()), step_note(s)});
    }
    page_.table(table);
  }

  void tell_rows() {
    page_.heading(style_.verbose ? "All figures" : "Figures that differ");
    Table table{{{"What", false, true}, {"Of", false, true}, {"A", true}, {"B", true}, {"B less A", true}, {"%", true}},
                {}};
    std::string last;
    for (const decide::DifferenceRow& row : c_.rows) {
      if (!row.differs && !style_.verbose) continue;
      ShownRow shown = shown_row(row, display_, glyphs());
      const bool again = shown.what == last;
      last = shown.what;
      table.rows.push_back({again ? "" : shown.what, shown.of, shown.a, shown.b, shown.difference, shown.percent});
    }
    if (table.rows.empty()) return page_.remark("None.");
    page_.table(table);
    page_.remark("A dash: this one does not have it, or it is not determined. " + joints_meaning());
  }

  void tell_end() {
    const std::vector<std::string> warnings = warnings_in_words(c_, facts_.texts);
    if (!warnings.empty()) page_.heading("About the site files");
    for (const std::string& one : warnings) page_.item(one);
    page_.heading("Before anything is built or changed on these numbers");
    for (const std::string& caution : compare_cautions()) page_.item(caution);
    if (!style_.verbose) page_.remark("With --verbose also the figures that do not differ.");
    if (facts_.written.empty()) return;
    page_.blank();
    for (const std::string& file : facts_.written) page_.paragraph("Written: " + file);
  }

  const Comparison& c_;
  site::Display display_;
  terminal::Style style_;
  const CompareFacts& facts_;
  terminal::Page page_;
};

}  // namespace

std::string compare_summary(const Comparison& comparison, site::Display display, const terminal::Style& style,
                            const CompareFacts& facts) {
  return Summary(comparison, display, style, facts).tell();
}

}  // namespace forecourse::report
