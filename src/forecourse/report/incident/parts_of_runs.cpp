#include <algorithm>

#include "forecourse/report/incident/incident_parts.h"

namespace forecourse::report {
namespace {

/// The first run, and the one in which the most escapes; all of them stand in the data.
std::vector<std::size_t> told_runs(const studies::IncidentResult& r) {
  std::vector<std::size_t> out;
  if (r.runs.empty()) return out;
  out.push_back(0);
  std::size_t most = 0;
  for (std::size_t i = 1; i < r.runs.size(); ++i) {
    if (r.runs[i].escaped > r.runs[most].escaped) most = i;
  }
  if (most != 0) out.push_back(most);
  return out;
}

}  // namespace

IncidentPart PartWriter::barriers() const {
  IncidentPart part{"What stands in the way", {}, {}, {}};
  WordTable table{{"Barrier", "Of", "State", "What it does", "Why"}, {false, false, false, false, false}, {}};
  for (const studies::BarrierState& b : r_.barriers) {
    table.rows.push_back(
        {spaced(studies::word(b.barrier)), b.owner, studies::word(b.assurance), b.does, joined(b.reasons, "; ")});
  }
  if (table.rows.empty()) return part;
  part.sentences.emplace_back("Assured: every proof that it needs is on record. It may still fail.");
  part.tables.emplace_back("Barriers, and whether they can be counted on", std::move(table));
  return part;
}

IncidentPart PartWriter::barrier_table() const {
  IncidentPart part{"With and without each barrier", {}, {}, {}};
  if (r_.barrier_table.size() < 2) return part;
  WordTable table{{head("Escapes", Measure::volume), head("Outside", Measure::volume), "Line shut after", "Case"},
                  {true, true, true, false},
                  {}};
  for (const studies::BarrierRow& row : r_.barrier_table) {
    const studies::IncidentRun& run = r_.runs[row.run];
    const std::string name = run.status == studies::RunStatus::finished ? row.name : row.name + " (" + run.reason + ")";
    table.rows.push_back(
        {num(Measure::volume, row.escaped), num(Measure::volume, row.to_environment), time(run.isolated_at), name});
  }
  part.tables.emplace_back("What escapes with every barrier, and without each; outside: beyond the containment",
                           std::move(table));
  const auto without_check = std::find_if(r_.runs.begin(), r_.runs.end(), [&](const studies::IncidentRun& run) {
    return run.missing.size() == r_.runs.front().missing.size() + 1 &&
           run.missing.back() == studies::Barrier::check_valve && run.escaped < r_.runs.front().escaped;
  });
  if (without_check != r_.runs.end()) {
    part.sentences.emplace_back(
        "Without the check valve less escapes: with the pump off, what the line holds runs back into the tank instead "
        "of out of the opening.");
  }
  return part;
}

IncidentPart PartWriter::events() const {
  IncidentPart part{"What happens, moment by moment", {}, {}, {}};
  for (const std::size_t i : told_runs(r_)) {
    const studies::IncidentRun& run = r_.runs[i];
    WordTable table{{"After", head("Escaped", Measure::volume), head("Escaping", Measure::flow),
                     head("Line pressure", Measure::pressure), "What"},
                    {true, true, true, true, false},
                    {}};
    for (const studies::TimelineRow& row : run.timeline) {
      table.rows.push_back({time(row.time), num(Measure::volume, row.escaped), num(Measure::flow, row.flow),
                            num(Measure::pressure, row.pressure), row.words});
    }
    part.tables.emplace_back(run.name, std::move(table));
  }
  if (!part.tables.empty()) {
    part.sentences.emplace_back(
        "Pressure is gauge pressure in the line at the height of the opening, where it is determined.");
  }
  return part;
}

IncidentPart PartWriter::ledger() const {
  IncidentPart part{"Where every drop went", {}, {}, {}};
  if (r_.runs.empty()) return part;
  const studies::IncidentRun& run = r_.runs.front();
  WordTable table{
      {head("Amount", Measure::volume), "From", "To", "Product", "Cause"}, {true, false, false, false, false}, {}};
  for (const studies::LedgerLine& line : run.ledger) {
    table.rows.push_back({num(Measure::volume, line.amount), studies::word(line.from), studies::word(line.to),
                          line.product, line.cause});
  }
  if (table.rows.empty()) return part;
  part.tables.emplace_back(run.name, std::move(table));
  part.sentences.push_back("The balance closes to " +
                           std::string(run.balance < 1e-12 ? "a part in a million million" : "less than it must") +
                           " of the largest amount moved.");
  return part;
}

IncidentPart PartWriter::jets() const {
  IncidentPart part{"A narrow gap throws high, a full break floods low", {}, {}, {}};
  if (r_.jets.empty()) return part;
  WordTable table{{"Share open", head("Flow", Measure::flow), head("Velocity", Measure::velocity),
                   head("Height, with air", Measure::length), head("Height, no air", Measure::length),
                   head("In 60 s", Measure::volume)},
                  {true, true, true, true, true, true},
                  {}};
  for (const studies::JetRow& jet : r_.jets) {
    table.rows.push_back({number(100.0 * jet.area_share, 0, glyphs_) + " %", num(Measure::flow, jet.flow),
                          num(Measure::velocity, jet.velocity), num(Measure::length, jet.height_low),
                          num(Measure::length, jet.height_high), num(Measure::volume, jet.in_60_seconds)});
  }
  part.tables.emplace_back("Steady flow through a part of the full opening, nothing shut", std::move(table));
  part.sentences.emplace_back(
      "Heights are orders of magnitude: measured water jets reached 0.3 to 0.8 of the way without air.");
  return part;
}

IncidentPart PartWriter::pool() const {
  IncidentPart part{"The pool on the slab", {}, {}, {}};
  if (!r_.pool) return part;
  const studies::PoolTold& pool = *r_.pool;
  part.sentences.push_back("At most " + full(Measure::volume, pool.volume) +
                           " lies on the slab in the worst of the cases told: " + full(Measure::area, pool.area) +
                           ", as if round a radius of " + full(Measure::length, pool.radius) + ".");
  part.sentences.emplace_back(
      "The area goes with the thickness of the film, which is the user's figure or illustrative.");
  if (pool.slope.value_or(0.0) > 0.0)
    part.sentences.emplace_back("It runs down the slope of the forecourt and is longer than it is wide.");
  return part;
}

IncidentPart PartWriter::cause_effect() const {
  IncidentPart part{"Which signal stops what", {}, {}, {}};
  if (r_.cause_effect.rows.empty()) return part;
  WordTable table{{"Signal"}, {false}, {}};
  for (const std::string& column : r_.cause_effect.columns) {
    table.heads.push_back(column);
    table.numbers.push_back(false);
  }
  for (const char* more : {"Acts in", "Fail-safe", "Tested"}) {
    table.heads.emplace_back(more);
    table.numbers.push_back(false);
  }
  for (const studies::CauseRow& row : r_.cause_effect.rows) {
    std::vector<std::string> cells{row.cause};
    cells.insert(cells.end(), row.effects.begin(), row.effects.end());
    cells.push_back(row.acts_in ? time(*row.acts_in) : "not entered");
    cells.emplace_back(!row.fail_safe ? "not entered" : *row.fail_safe ? "yes" : "no");
    cells.emplace_back(row.tested ? "on record" : "not on record");
    table.rows.push_back(std::move(cells));
  }
  part.tables.emplace_back("Cause and effect, as the site file says", std::move(table));
  return part;
}

IncidentPart PartWriter::return_to_service() const {
  IncidentPart part{"Before fuel flows again", {}, {}, {}};
  WordTable table{{"Step", "What", "By", "Source"}, {false, false, false, false}, {}};
  for (const studies::ReturnStep& step : r_.return_to_service)
    table.rows.push_back({step.kind, step.what, step.by, step.source});
  if (!table.rows.empty())
    part.tables.emplace_back("What is replaced, inspected and tested, and by whom", std::move(table));
  return part;
}

IncidentPart PartWriter::inputs() const {
  IncidentPart part{"What it was computed with", {}, {}, {}};
  WordTable entered{{"Figure", "Value"}, {false, false}, {}};
  WordTable others{{"Figure", "Value", "Standing", "Source"}, {false, false, false, false}, {}};
  for (const studies::InputUsed& input : r_.inputs) {
    const std::string value = value_of(input);
    if (input.entered) {
      entered.rows.push_back({input.what, value});
    } else {
      others.rows.push_back({input.what, value, word(input.status), input.source});
    }
  }
  for (const DefaultUsed& used : r_.defaults) {
    others.rows.push_back({used.what, default_value(used, display_, glyphs_), word(used.status), used.source});
  }
  if (!entered.rows.empty()) part.tables.emplace_back("The user's figures", std::move(entered));
  if (!others.rows.empty()) part.tables.emplace_back("What stands in where none was entered", std::move(others));
  return part;
}

std::string PartWriter::value_of(const studies::InputUsed& input) const {
  const studies::Spread& v = input.value;
  std::string likely = shown(v.likely, input.unit, display_, glyphs_);
  if (v.is_certain()) return likely;
  return likely + " (" + shown(v.low, input.unit, display_, glyphs_) + " to " +
         shown(v.high, input.unit, display_, glyphs_) + ")";
}

IncidentPart PartWriter::warnings() const {
  IncidentPart part{"Warnings", {}, {}, {}};
  for (const Diagnostic& warning : r_.warnings) part.items.push_back(warning.message);
  return part;
}

}  // namespace forecourse::report
