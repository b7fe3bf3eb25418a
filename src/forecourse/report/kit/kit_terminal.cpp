#include <fmt/format.h>

#include "forecourse/report/kit/kit_report.h"
#include "forecourse/report/kit/kit_view.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

using namespace handover;

class Writer {
 public:
  Writer(const Kit& kit, site::Display display, const terminal::Style& style, terminal::Page& page)
      : kit_(kit),
        display_(display),
        style_(style),
        glyphs_(style.utf8 ? Glyphs::unicode : Glyphs::ascii),
        page_(page) {}

  void order() {
    page_.heading("To order");
    terminal::Table table{{{"Part", false, true}, {"Size", false, true}, {"Count", true}}, {}};
    for (const OrderLine& one : kit_.order)
      table.rows.push_back({one.what, sizes_in_words(one.sizes, display_, glyphs_), count_in_words(one.count)});
    page_.table(table);
    if (kit_.pipes.empty()) return;
    page_.heading("Pipe to order");
    const std::string unit = unit_label(Measure::length, display_, glyphs_);
    terminal::Table pipes{{{"Pipe", false, true},
                           {"Size", false, true},
                           {"Runs", true},
                           {"Laid, " + unit, true},
                           {"With waste, " + unit, true}},
                          {}};
    if (kit_.options.stick_length) pipes.columns.push_back({"Sticks", true});
    for (const PipeTotal& one : kit_.pipes) {
      pipes.rows.push_back({one.what, sizes_in_words(one.sizes, display_, glyphs_), runs_in_words(one),
                            total_in_words(one, length(one.length)), total_in_words(one, length(one.order_length))});
      if (kit_.options.stick_length) pipes.rows.back().push_back(count_in_words(one.sticks));
    }
    page_.table(pipes);
  }

  void not_told() {
    page_.heading("What the order needs and the file does not tell");
    for (const std::string& one : not_told_in_words(kit_, display_, glyphs_)) page_.item(one);
  }

  void schedule() {
    page_.heading("Schedule along the course");
    page_.remark(
        "Rating needed: of fuel, static and dead-head at the level entered, surge and thermal expansion not "
        "computed; of vapor, by the vent valve.");
    for (int stop = 1; stop <= static_cast<int>(Stop::station); ++stop) of_stop(static_cast<Stop>(stop));
    if (!style_.verbose)
      page_.remark("--verbose tells of each what it does, its size, its fuel, and which parts it is.");
  }

  void spares() {
    if (kit_.spares.empty()) return;
    page_.heading("Spares, by what their failure means");
    page_.remark("One of each is common practice, no source; how often a part fails is not known here.");
    terminal::Table table{{{"Its failure"}, {"Part", false, true}, {"Why", false, true}}, {}};
    for (const Spare& one : kit_.spares)
      table.rows.push_back({handover::word(one.consequence), kit_.rows[one.rows.front()].what, one.reason});
    page_.table(table);
  }

 private:
  [[nodiscard]] std::string length(double si) const { return number(Measure::length, display_, si, glyphs_); }

  void of_stop(Stop stop) {
    terminal::Table table{{{"Part", false, true},
                           {"Amount", true},
                           {"Rating needed", true},
                           {"Fuel", false, true},
                           {"Listed to", false, true}},
                          {}};
    for (const KitRow& row : kit_.rows) {
      if (row.stop != stop) continue;
      table.rows.push_back({row.not_ordered.empty() ? row.what : row.what + " (" + row.not_ordered + ")",
                            amount_in_words(row, display_, glyphs_), needed_in_words(row.needed, display_, glyphs_),
                            kinds_in_words(row.compatibility), standards_in_words(row.standards)});
    }
    if (table.rows.empty()) return;
    page_.blank();
    page_.paragraph(stop == Stop::station ? std::string("Whole station")
                                          : fmt::format("{}. {}", static_cast<int>(stop), handover::word(stop)));
    page_.table(table);
    if (style_.verbose) each_row(stop);
  }

  void each_row(Stop stop) {
    constexpr std::size_t all = 1000;
    for (const KitRow& row : kit_.rows) {
      if (row.stop != stop) continue;
      page_.item(row.what + ". " + row.function);
      page_.remark("Size: " + sizes_in_words(row.sizes, display_, glyphs_) + ". Thread: not entered.");
      const std::string fit = compatibility_in_words(row.compatibility);
      const std::string& missing = row.compatibility.missing;
      if (!fit.empty()) page_.remark("Fuel: " + fit + (missing.empty() ? "" : ", " + missing) + ".");
      page_.remark("Of: " + subjects_in_words(row.subjects, all) + ".");
    }
  }

  const Kit& kit_;
  site::Display display_;
  const terminal::Style& style_;
  Glyphs glyphs_;
  terminal::Page& page_;
};

}  // namespace

std::vector<std::string> kit_cautions() {
  return {
      "A schedule of what the site file lists. It advises; it is no order, no approval and no test.",
      "The edition of the code that the local authority has adopted rules, and so do listing and instructions.",
      "Licensed trades do the work, certified testers the tests.",
      std::string("Pressures are static and dead-head, computed at the level of the tank that is entered: a fuller ") +
          "tank gives more. Surge, and the expansion of fuel that is shut in and warms, are not computed and can be " +
          "greater.",
      "That a part is compatible with a fuel is shown by its listing or by its maker in writing, not here.",
  };
}

std::string kit_summary(const Kit& kit, const site::Site& site, const terminal::Style& style,
                        const ReportFacts& facts) {
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": equipment schedule");
  page.paragraph(kit_cautions().front() + " forecourse " + kit.version + ".");
  Writer writer(kit, site.display, style, page);
  writer.order();
  writer.not_told();
  writer.schedule();
  writer.spares();
  tell_end({kit.version, kit.defaults, kit.warnings, kit_cautions()}, site.display,
           style.utf8 ? Glyphs::unicode : Glyphs::ascii, facts.written, page);
  return page.text();
}

}  // namespace forecourse::report
