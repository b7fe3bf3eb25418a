#include "forecourse/report/flow/flow_terminal.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "forecourse/report/findings.h"
#include "forecourse/report/flow/flow_view.h"
#include "forecourse/report/flow/ladder/ladder_terminal.h"
#include "forecourse/report/flow/pump_words.h"
#include "forecourse/report/flow/spans/span_terminal.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

using studies::FlowResult;
using studies::SystemFlow;
using terminal::Table;

constexpr std::size_t longest_list = 12;  // of defaults, unless all are asked for

class Summary {
 public:
  Summary(const FlowResult& result, const site::Site& site, const TerminalStyle& style, const FlowSummaryFacts& facts)
      : result_(result), site_(site), style_(style), facts_(facts), page_(style) {}

  std::string tell() {
    page_.title((site_.name.empty() ? "Station without a name" : site_.name.text) + ": flow at every hose");
    tell_asked();
    tell_not_determined();
    tell_findings();
    for (const HoseGroup& group : hose_groups(result_)) tell_group(group);
    tell_ladders(result_, site_.display, glyphs(), style_.verbose, page_);
    tell_spans(result_, site_.display, glyphs(), style_.verbose, page_);
    tell_lines_at_rest(result_, site_.display, glyphs(), style_.verbose, page_);
    for (const auto& [title, sentences] : facts_.more) {
      page_.heading(title);
      for (const std::string& sentence : sentences) page_.paragraph(sentence);
    }
    tell_defaults();
    tell_warnings();
    tell_cautions();
    return page_.text();
  }

 private:
  [[nodiscard]] Glyphs glyphs() const { return style_.utf8 ? Glyphs::unicode : Glyphs::ascii; }
  [[nodiscard]] std::string in(Measure measure) const { return unit_label(measure, site_.display, glyphs()); }
  [[nodiscard]] std::string show(Measure measure, double si) const {
    return number(measure, site_.display, si, glyphs());
  }
  [[nodiscard]] std::string show(Measure measure, const std::optional<double>& si) const {
    return si ? show(measure, *si) : number(std::nan(""), 0, glyphs());
  }
  [[nodiscard]] std::string full(Measure measure, double si) const {
    return with_unit(measure, site_.display, si, glyphs());
  }

  void tell_asked() {
    std::string asked;
    for (const studies::OpenSet& set : result_.options.open_sets) {
      asked += (asked.empty() ? "" : "; ") + in_words(set);
    }
    page_.paragraph("Open together: " + (asked.empty() ? "nothing" : asked) + ". forecourse " + result_.version + ".");
    if (const std::string text = without_pump(result_); !text.empty()) page_.paragraph(text);
    page_.paragraph(flow_cautions().front());
  }

  void tell_not_determined() {
    const std::vector<std::string> reasons = not_determined(result_);
    if (reasons.empty()) return;
    page_.heading("Not determined, or with a reservation");
    for (const std::string& reason : reasons) page_.item(reason);
  }

  void tell_findings() {
    if (facts_.findings.empty()) return;
    page_.heading("Requirements: " + count_by_state(facts_.findings));
    for (const FindingGroup& group : grouped(facts_.findings)) {
      page_.notice(checks::word(group.findings.front()->state), in_words(group, site_.display, glyphs()));
    }
  }

  void tell_group(const HoseGroup& group) {
    if (group.system != nullptr) {
      page_.heading(group.system->id + ", flow in " + in(Measure::flow));
    } else {
      page_.heading("Blended hoses and hoses without piping, flow in " + in(Measure::flow));
    }
    tell_hoses(group);
    for (const std::string& limit : limits_in_words(result_, group, site_.display, glyphs())) {
      page_.remark(limit);
    }
    if (group.system == nullptr) return;
    for (std::size_t i = 0; i < result_.states.size(); ++i) {
      const SystemFlow* system = find_system(result_.states[i], group.system->id);
      if (system == nullptr) continue;
      const bool determined = system->status != studies::FlowStatus::not_determined;
      if (!determined && i > 0) continue;
      tell_state(result_.states[i].open_set, *system);
      if (i == 0) tell_first_state(*system);
    }
  }

  void tell_hoses(const HoseGroup& group) {
    Table table{{{"Hose"}, {"At"}, {"Alone", true}, {"One each", true}, {"All open", true}, {"Note", false, true}}, {}};
    for (const HoseRow& row : group.rows) {
      const studies::HoseSummary& h = *row.hose;
      const std::string note =
          group.system == nullptr ? h.product + (row.note.empty() ? "" : "; " + row.note) : row.note;
      const auto flow = [&](const auto& of) { return flow_text(of, site_.display, glyphs()); };
      table.rows.push_back({h.id, h.dispenser, flow(h.alone), flow(h.one_each), flow(h.all_open), note});
    }
    if (table.rows.empty()) return page_.remark("No hose draws on this piping alone.");
    page_.table(table);
    const bool has_gap = std::any_of(group.rows.begin(), group.rows.end(), [](const HoseRow& row) {
      return row.hose->alone && !(row.hose->one_each && row.hose->all_open);
    });
    if (has_gap) page_.remark("A dash: the hose is not in that set, or its flow is not determined.");
  }

  void tell_state(const studies::OpenSet& set, const SystemFlow& system) {
    page_.blank();
    const studies::HoseFlow* least = slowest(system);
    const studies::HoseFlow* most = fastest(system);
    std::string text = "With " + set.name + ": ";
    if (system.status != studies::FlowStatus::determined) {
      text += status_in_words(system);
    } else if (least == nullptr) {
      text += "none of its hoses is open";
    } else {
      text += full(Measure::flow, system.total_flow) + " in total, ";
      text += least == most
                  ? "every open hose " + full(Measure::flow, least->hose_flow)
                  : "slowest " + with_alike(system, *least) + ", " + full(Measure::flow, least->hose_flow) +
                        "; fastest " + with_alike(system, *most) + ", " + full(Measure::flow, most->hose_flow);
    }
    page_.paragraph(text + ".");
  }

  void tell_first_state(const SystemFlow& system) {
    if (system.status == studies::FlowStatus::not_determined) return;
    tell_pumps(system);
    if (slowest(system) == nullptr) return;  // no hose of it is open: nothing flows
    tell_lines(system);
    tell_budget(*slowest(system));
  }

  void tell_pumps(const SystemFlow& system) {
    if (system.pumps.empty()) return;
    const std::string gauge = ", " + in(Measure::pressure) + " gauge";
    Table table{{{"Pump"},
                 {"Flow, " + in(Measure::flow), true},
                 {"Adds, " + in(Measure::pressure), true},
                 {"Discharge" + gauge, true},
                 {"Leak detector" + gauge, true},
                 {"Note", false, true}},
                {}};
    for (const studies::PumpDuty& p : system.pumps) {
      table.rows.push_back(
          {p.id, show(Measure::flow, p.flow), show(Measure::pressure, p.pressure_rise),
           show(Measure::pressure, p.discharge_pressure_gauge),
           p.leak_detector_pressure_gauge ? show(Measure::pressure, *p.leak_detector_pressure_gauge) : "none",
           pump_note(p)});
    }
    page_.table(table);
    for (const std::string& text : control_in_words(system, site_.display, glyphs())) page_.remark(text);
    for (const std::string& text : pumps_in_words(system, site_.display, glyphs())) page_.remark(text);
  }

  void tell_lines(const SystemFlow& system) {
    if (system.lines.empty()) return;
    Table table{{{"Line"},
                 {"Flow, " + in(Measure::flow), true},
                 {"Velocity, " + in(Measure::velocity), true},
                 {"Takes, " + in(Measure::pressure), true}},
                {}};
    for (const studies::LineFlow& l : system.lines) {
      table.rows.push_back({l.id, show(Measure::flow, l.flow), show(Measure::velocity, l.velocity),
                            show(Measure::pressure, l.pressure_loss)});
    }
    page_.blank();
    page_.table(table);
  }

  void tell_budget(const studies::HoseFlow& hose) {
    const ShownBudget budget = shown_budget(hose, site_.display);
    if (budget.rows.empty()) return;
    Table table{
        {{"Part"}, {"Of"}, {"Adds or takes, " + in(Measure::pressure), true}, {"Left, " + in(Measure::pressure), true}},
        {}};
    for (const ShownBudgetRow& row : budget.rows) {
      table.rows.push_back(
          {row.part, row.owner, budget.signed_text(row.change, glyphs()), budget.text(row.left, glyphs())});
    }
    page_.blank();
    page_.remark("Where the pressure goes on the way to " + hose.id + ", the slowest open hose:");
    page_.table(table);
    page_.remark("Rounded so that what is shown adds up.");
  }

  void tell_defaults() {
    if (result_.defaults.empty()) return;
    page_.heading("Values that were not entered: " + count_by_status(result_.defaults));
    const std::vector<DefaultGroup> groups = grouped(result_.defaults);
    const bool listed = style_.verbose || groups.size() <= longest_list;
    if (!listed) return page_.remark("The list is in the report, or here with --verbose.");
    Table table{{{"What", false, true}, {"Value", true}, {"Status"}, {"Source", false, true}}, {}};
    for (const DefaultGroup& group : groups) {
      const DefaultUsed& d = *group.first;
      table.rows.push_back(
          {group.what, default_value(d, site_.display, glyphs()), forecourse::word(d.status), d.source});
    }
    page_.table(table);
  }

  void tell_warnings() {
    if (result_.warnings.empty()) return;
    page_.heading("About the site file: " + count_text(result_.warnings));
    for (const Diagnostic& d : result_.warnings) {
      std::string text = place(d) + d.message + (d.hint.empty() ? "" : "; " + d.hint);
      page_.notice(d.severity == Severity::error ? "error" : d.severity == Severity::note ? "note" : "warning", text);
    }
  }

  [[nodiscard]] std::string place(const Diagnostic& d) const {
    if (!d.where || d.where->text >= facts_.texts.size()) return {};
    const SourceText& source = facts_.texts[d.where->text];
    const LineColumn at = line_column(source.text, d.where->begin);
    return source.name + ":" + std::to_string(at.line) + ":" + std::to_string(at.column) + ": ";
  }

  void tell_cautions() {
    page_.heading("Before anything is built or changed on these numbers");
    for (const std::string& caution : flow_cautions()) page_.item(caution);
    if (facts_.written.empty()) return;
    page_.blank();
    for (const std::string& file : facts_.written) page_.paragraph("Written: " + file);
  }

  const FlowResult& result_;
  const site::Site& site_;
  TerminalStyle style_;
  const FlowSummaryFacts& facts_;
  terminal::Page page_;
};

}  // namespace

std::string flow_summary(const FlowResult& result, const site::Site& site, const TerminalStyle& style,
                         const FlowSummaryFacts& facts) {
  return Summary(result, site, style, facts).tell();
}

}  // namespace forecourse::report
