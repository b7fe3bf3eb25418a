#include "forecourse/decide/compare/incident/incident_rows.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace forecourse::decide {
namespace {

using studies::IncidentResult;
using studies::IncidentRun;

constexpr double share_apart = 1e-4;  // of the larger: what the tolerances of single runs leave

double least_apart(IncidentAmount amount) {
  switch (amount) {
    case IncidentAmount::volume:
      return 1e-8;
    case IncidentAmount::flow:
      return 1e-9;
    case IncidentAmount::time:
      return 1e-3;
  }
  return 0.0;
}

/// The row that is the same thing as `wanted`, or a new one at the end.
template <class Row, class Same>
Row& row_of(std::vector<Row>& rows, Row wanted, const Same& same) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return same(row, wanted); });
  if (found != rows.end()) return *found;
  rows.push_back(std::move(wanted));
  return rows.back();
}

using Side = std::optional<double> Beside::*;

struct FigureOf {
  IncidentFigure figure;
  std::optional<double> (*value)(const IncidentRun&);
};

void add_causes(std::vector<CauseAmount>& rows, const IncidentRun& run, Side side) {
  const auto same = [](const CauseAmount& x, const CauseAmount& y) {
    return std::tie(x.from, x.to, x.product, x.cause) == std::tie(y.from, y.to, y.product, y.cause);
  };
  for (const studies::LedgerLine& line : run.ledger) {
    CauseAmount& row = row_of(rows, {line.from, line.to, line.product, line.cause, {0.0, 0.0}}, same);
    *(row.amount.*side) += line.amount;
  }
}

void add_events(std::vector<EventRow>& rows, const IncidentRun& run, Side side) {
  for (const studies::TimelineRow& line : run.timeline) {
    const auto same = [&](const EventRow& x, const EventRow& y) {
      return x.what == y.what && x.owner == y.owner && !(x.time.*side);
    };
    EventRow& row = row_of(rows, {line.what, line.owner, line.words, {}, {}}, same);
    row.time.*side = line.time;
    row.escaped.*side = line.escaped;
  }
}

double earlier(const Beside& time) {
  if (!time.a) return time.b.value_or(0.0);
  return time.b ? std::min(*time.a, *time.b) : *time.a;
}

void add_ends(std::vector<EndRow>& rows, const IncidentResult& result, Side side) {
  const auto same = [](const EndRow& x, const EndRow& y) { return x.product == y.product; };
  for (const studies::OpenEnd& end : result.open_ends) {
    EndRow& row = row_of(rows, {end.product, {}, {}}, same);
    row.steady.*side = end.steady_flow;
    row.gravity.*side = end.gravity_flow;
  }
}

void add_cases(std::vector<CaseRow>& rows, const IncidentResult& result, Side side) {
  const auto same = [](const CaseRow& x, const CaseRow& y) { return x.name == y.name; };
  for (const studies::BarrierRow& one : result.barrier_table) {
    CaseRow& row = row_of(rows, {one.name, {}, {}}, same);
    if (result.runs[one.run].status == studies::RunStatus::failed) continue;
    row.escaped.*side = one.escaped;
    row.outside.*side = one.to_environment;
  }
}

void add_barriers(std::vector<BarrierBeside>& rows, const IncidentResult& result,
                  std::optional<studies::BarrierState> BarrierBeside::*side) {
  const auto same = [](const BarrierBeside& x, const BarrierBeside& y) {
    return x.barrier == y.barrier && x.owner == y.owner;
  };
  for (const studies::BarrierState& state : result.barriers) {
    row_of(rows, {state.barrier, state.owner, {}, {}}, same).*side = state;
  }
}

bool same_barrier(const std::optional<studies::BarrierState>& a, const std::optional<studies::BarrierState>& b) {
  if (!a || !b) return a.has_value() == b.has_value();
  return a->assurance == b->assurance && a->reasons == b->reasons && a->does == b->does;
}

}  // namespace

std::optional<double> Beside::difference() const { return a && b ? std::optional(*b - *a) : std::nullopt; }

bool same_amount(IncidentAmount amount, const Beside& beside) {
  if (!beside.a || !beside.b) return beside.a.has_value() == beside.b.has_value();
  const double larger = std::max(std::abs(*beside.a), std::abs(*beside.b));
  return std::abs(*beside.b - *beside.a) <= std::max(share_apart * larger, least_apart(amount));
}

IncidentAmount amount_of(IncidentFigure figure) {
  switch (figure) {
    case IncidentFigure::escaped:
    case IncidentFigure::outside:
      return IncidentAmount::volume;
    case IncidentFigure::steady_flow:
    case IncidentFigure::peak_flow:
      return IncidentAmount::flow;
    case IncidentFigure::isolated_at:
    case IncidentFigure::sensor_at:
    case IncidentFigure::seal_at:
    case IncidentFigure::brim_at:
      return IncidentAmount::time;
  }
  return IncidentAmount::volume;
}

std::vector<FigureRow> figure_rows(const IncidentRun& a, const IncidentRun& b) {
  using Value = std::optional<double>;
  static const std::vector<FigureOf> figures{
      {IncidentFigure::escaped, [](const IncidentRun& r) { return Value(r.escaped); }},
      {IncidentFigure::outside, [](const IncidentRun& r) { return Value(r.to_environment); }},
      {IncidentFigure::steady_flow, [](const IncidentRun& r) { return Value(r.steady_flow); }},
      {IncidentFigure::peak_flow, [](const IncidentRun& r) { return Value(r.peak_flow); }},
      {IncidentFigure::isolated_at, [](const IncidentRun& r) { return r.isolated_at; }},
      {IncidentFigure::sensor_at, [](const IncidentRun& r) { return r.sensor_at; }},
      {IncidentFigure::seal_at, [](const IncidentRun& r) { return r.seal_at; }},
      {IncidentFigure::brim_at, [](const IncidentRun& r) { return r.brim_at; }}};
  std::vector<FigureRow> rows;
  for (const FigureOf& one : figures) {
    const Beside value{one.value(a), one.value(b)};
    rows.push_back({one.figure, value, !same_amount(amount_of(one.figure), value)});
  }
  return rows;
}

std::vector<HolderRow> holder_rows(const IncidentRun& a, const IncidentRun& b) {
  std::vector<HolderRow> rows;
  const auto same = [](const HolderRow& x, const HolderRow& y) { return x.holder == y.holder; };
  for (const auto& held : a.amounts) row_of(rows, {held.holder, {}}, same).amount.a = held.end;
  for (const auto& held : b.amounts) row_of(rows, {held.holder, {}}, same).amount.b = held.end;
  for (HolderRow& row : rows) row.differs = !same_amount(IncidentAmount::volume, row.amount);
  return rows;
}

std::vector<CauseAmount> cause_rows(const IncidentRun& a, const IncidentRun& b) {
  std::vector<CauseAmount> rows;
  add_causes(rows, a, &Beside::a);
  add_causes(rows, b, &Beside::b);
  for (CauseAmount& row : rows) row.differs = !same_amount(IncidentAmount::volume, row.amount);
  return rows;
}

std::vector<EventRow> event_rows(const IncidentRun& a, const IncidentRun& b) {
  std::vector<EventRow> rows;
  add_events(rows, a, &Beside::a);
  add_events(rows, b, &Beside::b);
  for (EventRow& row : rows) {
    row.differs = !same_amount(IncidentAmount::time, row.time) || !same_amount(IncidentAmount::volume, row.escaped);
  }
  std::stable_sort(rows.begin(), rows.end(),
                   [](const EventRow& x, const EventRow& y) { return earlier(x.time) < earlier(y.time); });
  return rows;
}

std::vector<EndRow> end_rows(const IncidentResult& a, const IncidentResult& b) {
  std::vector<EndRow> rows;
  add_ends(rows, a, &Beside::a);
  add_ends(rows, b, &Beside::b);
  for (EndRow& row : rows) {
    row.differs = !same_amount(IncidentAmount::flow, row.steady) || !same_amount(IncidentAmount::flow, row.gravity);
  }
  return rows;
}

std::vector<CaseRow> case_rows(const IncidentResult& a, const IncidentResult& b) {
  std::vector<CaseRow> rows;
  add_cases(rows, a, &Beside::a);
  add_cases(rows, b, &Beside::b);
  for (CaseRow& row : rows) {
    row.differs =
        !same_amount(IncidentAmount::volume, row.escaped) || !same_amount(IncidentAmount::volume, row.outside);
  }
  return rows;
}

std::vector<BarrierBeside> barrier_rows(const IncidentResult& a, const IncidentResult& b) {
  std::vector<BarrierBeside> rows;
  add_barriers(rows, a, &BarrierBeside::a);
  add_barriers(rows, b, &BarrierBeside::b);
  for (BarrierBeside& row : rows) row.differs = !same_barrier(row.a, row.b);
  return rows;
}

}  // namespace forecourse::decide
