#pragma once

#include "forecourse/decide/compare/compare.h"
#include "forecourse/report/compare/compare_view.h"

namespace forecourse::report {

/// A comparison put together by hand, of round numbers of the right size: a wider trunk that pays from three hoses on.
[[nodiscard]] inline decide::Comparison sample_comparison() {
  using decide::DifferenceRow;
  using decide::Topic;
  decide::Comparison c;
  c.a.name = c.b.name = "Site S";
  c.a.flow.version = c.b.flow.version = "1.2.3";
  c.changed = {{"line.trunk.bore", "\"2.00 in\"", "\"3 in\""}, {"line.trunk.wall", "", "\"0.2 in\""}};
  c.only_b = {{"branch", "B1"}};
  const auto row = [&](Topic topic, const char* state, const char* subject, std::optional<double> a,
                       std::optional<double> b, bool differs) {
    DifferenceRow r;
    r.topic = topic;
    r.system = topic == Topic::pipe_total ? "" : "regular";
    r.state = state;
    r.subject = subject;
    r.a = a;
    r.b = b;
    r.differs = differs;
    c.rows.push_back(r);
  };
  row(Topic::hose_flow, DifferenceRow::alone, "D1.a", 7.5e-4, 7.5e-4, false);
  row(Topic::hose_flow, "all hoses open", "D1.a", 6.0e-4, 6.3e-4, true);
  row(Topic::hose_flow, "all hoses open", "D3.a", 5.9e-4, std::nullopt, true);
  row(Topic::slowest_flow, "all hoses open", "regular", 5.9e-4, 6.3e-4, true);
  c.rows.back().detail_a = "D3.a";
  c.rows.back().detail_b = "D1.a";
  row(Topic::pump_discharge, "all hoses open", "P1", 1.6e5, 1.57e5, true);
  row(Topic::line_velocity, "all hoses open", "trunk", 1.8, 1.8 + 1e-5, true);
  row(Topic::pipe_total, "", "", 60.0, 60.0, false);
  c.unchanged = decide::unchanged_in(c.rows);
  decide::Worth worth;
  worth.system = "regular";
  worth.least_gain = 0.01;
  worth.from = 3;
  worth.nothing_below = worth.held_below = true;
  const double flows[][2] = {{6.3e-4, 6.3e-4}, {6.3e-4, 6.3e-4}, {6.1e-4, 6.3e-4}, {5.9e-4, 6.2e-4}};
  for (const auto& [a, b] : flows) {
    decide::WorthStep step;
    step.open = static_cast<int>(worth.steps.size()) + 1;
    step.slowest_a = a;
    step.slowest_b = b;
    step.hose_a = step.hose_b = "D3.a";
    step.gain = (b - a) / a;
    step.nothing = step.held = a == b;
    step.verdict = a == b ? decide::Verdict::same : decide::Verdict::gains;
    step.proof_a = step.proof_b = studies::Proof::argument;
    worth.steps.push_back(step);
  }
  c.worth = {worth};
  checks::Finding finding;
  finding.rule = "flow-to-keep";
  finding.requirement = "every open hose keeps the flow asked for";
  finding.subject = "D3.a";
  finding.state = checks::FindingState::falls_short;
  checks::Finding better = finding;
  better.state = checks::FindingState::meets;
  c.findings = {{finding, better}};
  c.findings_alike = 5;
  c.dead_heads = {{"all hoses open", "P2", true, false}};
  return c;
}

[[nodiscard]] inline CompareFacts sample_facts() {
  CompareFacts facts;
  facts.label_a = "sites/site-s.toml";
  facts.label_b = "A with line.trunk.bore=3 in";
  facts.date = "25 Nov 2026";
  facts.command_line = "forecourse compare sites/site-s.toml --set 'line.trunk.bore=3 in'";
  facts.written = {"out/compare.html"};
  return facts;
}

}  // namespace forecourse::report
