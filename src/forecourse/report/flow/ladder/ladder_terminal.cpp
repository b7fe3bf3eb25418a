#include "forecourse/report/flow/ladder/ladder_terminal.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "forecourse/report/flow/ladder/ladder_view.h"

namespace forecourse::report {
namespace {

constexpr std::size_t most_rows = 12;

/// The numbers that are shown: all, or the first, the last, those around each limit, and some between.
std::vector<std::size_t> shown_steps(const LadderGroup& group, bool whole) {
  std::vector<std::size_t> shown;
  const std::size_t count = group.hoses();
  const std::size_t every = whole || count <= most_rows ? 1 : (count + most_rows - 1) / most_rows;
  for (std::size_t i = 0; i < count; ++i) {
    const auto keeps = [&](const studies::Ladder* ladder) {
      const auto n = ladder == nullptr ? std::nullopt : ladder->keeps;
      return n && (i + 1 == static_cast<std::size_t>(*n) || i == static_cast<std::size_t>(*n));
    };
    if (i % every == 0 || i + 1 == count || keeps(group.worst) || keeps(group.spread)) shown.push_back(i);
  }
  return shown;
}

class Teller {
 public:
  Teller(site::Display display, Glyphs glyphs, bool whole, terminal::Page& page)
      : display_(display), glyphs_(glyphs), whole_(whole), page_(page) {}

  void tell(const LadderGroup& group, const std::optional<double>& keep_flow) {
    page_.heading(group.system + ": the slowest hose by the number open, in " +
                  unit_label(Measure::flow, display_, glyphs_));
    tell_steps(group);
    for (const std::string& text : ladder_in_words(group, keep_flow, display_, glyphs_)) page_.remark(text);
    tell_worst(group);
  }

 private:
  [[nodiscard]] std::string show(double si) const { return number(Measure::flow, display_, si, glyphs_); }

  void tell_steps(const LadderGroup& group) {
    terminal::Table table{{{"Open", true}, {"Worst", true}, {"Slowest"}, {"Typical", true}}, {}};
    if (group.given != nullptr) table.columns.push_back({"Asked for", true});
    table.columns.push_back({"Total at worst", true});
    table.columns.push_back({"Worst is", false, true});
    for (const std::size_t i : shown_steps(group, whole_)) {
      const studies::LadderStep& worst = group.worst->steps[i];
      std::vector<std::string> row{std::to_string(i + 1), show(worst.slowest), slowest_in_words(worst),
                                   show(group.spread->steps[i].slowest)};
      if (group.given != nullptr) {
        row.push_back(show(i < group.given->steps.size() ? group.given->steps[i].slowest : std::nan("")));
      }
      row.push_back(show(worst.total));
      row.emplace_back(worst.proof == studies::Proof::best_found ? "best found" : "proved");
      table.rows.push_back(std::move(row));
    }
    page_.table(table);
    if (table.rows.size() < group.hoses()) page_.remark("Numbers between are left out: --verbose shows them.");
  }

  void tell_worst(const LadderGroup& group) {
    const std::vector<WorstRow> rows = worst_rows(group, whole_, display_, glyphs_);
    if (rows.empty()) return;
    terminal::Table table{{{"At worst", false, true}, {"Value"}, {"Open", false, true}, {"How known", false, true}},
                          {}};
    for (const WorstRow& row : rows) table.rows.push_back({row.what, row.value, row.open, row.proof});
    page_.blank();
    page_.table(table);
  }

  site::Display display_;
  Glyphs glyphs_;
  bool whole_;
  terminal::Page& page_;
};

}  // namespace

void tell_ladders(const studies::FlowResult& result, site::Display display, Glyphs glyphs, bool whole,
                  terminal::Page& page) {
  Teller teller(display, glyphs, whole, page);
  bool told = false;
  for (const LadderGroup& group : ladder_groups(result)) {
    if (group.hoses() < 2 && !whole) continue;
    teller.tell(group, result.options.keep_flow);
    told = true;
  }
  if (!told) return;
  page.blank();
  page.remark(ladder_terms());
}

}  // namespace forecourse::report
