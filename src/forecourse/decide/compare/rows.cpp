#include "forecourse/decide/compare/rows.h"

#include <algorithm>
#include <cmath>

#include "forecourse/decide/compare/figures.h"

namespace forecourse::decide {
namespace {

bool stand_together(const DifferenceRow& a, const DifferenceRow& b) {
  return a.topic == b.topic && a.state == b.state && a.system == b.system;
}

DifferenceRow row_of(const Figure& figure) {
  DifferenceRow row;
  row.topic = figure.topic;
  row.system = figure.system;
  row.state = figure.state;
  row.subject = figure.subject;
  row.bore = figure.bore;
  row.differs = true;
  return row;
}

std::optional<double> known(double value) { return std::isfinite(value) ? std::optional(value) : std::nullopt; }

void add_a(std::vector<DifferenceRow>& rows, const Figure& figure) {
  rows.push_back(row_of(figure));
  rows.back().a = known(figure.value);
  rows.back().differs = rows.back().a.has_value();
  rows.back().detail_a = figure.detail;
}

/// Puts B's figure beside A's; one that A does not have goes behind the rows of its kind.
void add_b(std::vector<DifferenceRow>& rows, const std::vector<Figure>& of_a, const Figure& figure) {
  const auto found = std::find_if(of_a.begin(), of_a.end(), [&](const Figure& f) { return f.is_of_the_same(figure); });
  if (found != of_a.end()) {
    const std::size_t at = static_cast<std::size_t>(found - of_a.begin());
    DifferenceRow& row = rows[at];
    row.b = known(figure.value);
    row.detail_b = figure.detail;
    row.differs =
        row.a.has_value() != row.b.has_value() || (row.a && row.b && !same_value(amount_of(row.topic), *row.a, *row.b));
    return;
  }
  rows.push_back(row_of(figure));
  rows.back().b = known(figure.value);
  rows.back().differs = rows.back().b.has_value();
  rows.back().detail_b = figure.detail;
}

/// By topic, and within it by state in the order they are first met; otherwise as it was.
void sort_rows(std::vector<DifferenceRow>& rows) {
  std::vector<std::string> states;
  for (const DifferenceRow& row : rows) {
    if (std::find(states.begin(), states.end(), row.state) == states.end()) states.push_back(row.state);
  }
  const auto place = [&](const DifferenceRow& row) {
    return std::pair(row.topic, std::find(states.begin(), states.end(), row.state) - states.begin());
  };
  std::stable_sort(rows.begin(), rows.end(), [&](const auto& x, const auto& y) { return place(x) < place(y); });
}

}  // namespace

Amount amount_of(Topic topic) {
  switch (topic) {
    case Topic::hose_flow:
    case Topic::slowest_flow:
    case Topic::total_flow:
    case Topic::spread:
      return Amount::flow;
    case Topic::inlet_pressure:
    case Topic::slowest_pressure:
    case Topic::pump_discharge:
      return Amount::gauge_pressure;
    case Topic::pump_rise:
    case Topic::line_loss:
      return Amount::pressure_difference;
    case Topic::line_velocity:
      return Amount::velocity;
    case Topic::line_length:
    case Topic::pipe_of_bore:
    case Topic::pipe_total:
      return Amount::length;
    case Topic::joints_at:
    case Topic::joints_total:
      return Amount::count;
  }
  return Amount::count;
}

bool same_value(Amount amount, double a, double b) {
  constexpr double relative = 1e-6;
  constexpr double least[] = {1e-9, 0.1, 0.1, 1e-6, 1e-9, 0.0};  // one for each Amount
  if (amount == Amount::count) return a == b;
  return std::abs(a - b) <=
         std::max(least[static_cast<std::size_t>(amount)], relative * std::max(std::abs(a), std::abs(b)));
}

std::optional<double> DifferenceRow::difference() const { return a && b ? std::optional(*b - *a) : std::nullopt; }

std::optional<double> DifferenceRow::share() const {
  if (!a || !b || same_value(amount_of(topic), *a, 0.0) || *a * *b < 0.0) return std::nullopt;
  return *b / *a - 1.0;  // of its size: a line that runs backwards grows as any other
}

std::vector<DifferenceRow> difference_rows(const site::Site& a, const studies::FlowResult& flow_a, const site::Site& b,
                                           const studies::FlowResult& flow_b) {
  std::vector<DifferenceRow> rows;
  const auto add = [&](const std::vector<Figure>& of_a, const std::vector<Figure>& of_b) {
    std::vector<DifferenceRow> part;
    for (const Figure& figure : of_a) add_a(part, figure);
    for (const Figure& figure : of_b) add_b(part, of_a, figure);
    std::erase_if(part, [](const DifferenceRow& row) { return !row.a && !row.b; });
    rows.insert(rows.end(), part.begin(), part.end());
  };
  add(flow_figures(flow_a), flow_figures(flow_b));
  add(piping_figures(a), piping_figures(b));
  sort_rows(rows);
  return rows;
}

std::vector<Unchanged> unchanged_in(const std::vector<DifferenceRow>& rows) {
  std::vector<Unchanged> out;
  for (const DifferenceRow& row : rows) {
    const bool told = std::any_of(out.begin(), out.end(), [&](const Unchanged& u) {
      return u.topic == row.topic && u.state == row.state && u.system == row.system;
    });
    const auto differs = [&](bool every_system) {
      return std::any_of(rows.begin(), rows.end(), [&](const DifferenceRow& other) {
        const bool meant =
            every_system ? other.topic == row.topic && other.state == row.state : stand_together(other, row);
        return meant && other.differs;
      });
    };
    if (told || differs(false)) continue;
    const auto alike = std::count_if(rows.begin(), rows.end(), [&](const auto& r) { return stand_together(r, row); });
    out.push_back({row.topic, row.state, row.system, static_cast<int>(alike), !differs(true)});
  }
  return out;
}

}  // namespace forecourse::decide
