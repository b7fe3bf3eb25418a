#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/studies/incident/incident.h"

namespace forecourse::decide {

/// A figure of A beside that of B [SI]; empty: this one has none.
struct Beside {
  std::optional<double> a;
  std::optional<double> b;

  [[nodiscard]] std::optional<double> difference() const;  ///< B minus A; empty where one has none
};

/// What a figure is, which says when two of them are the same.
enum class IncidentAmount { volume, flow, time };

/// True for two figures that single runs cannot tell apart: they differ by less than a part in 10 000 of the larger,
/// or by less than 1e-8 m3, 1e-9 m3/s, 1e-3 s. Two that both are missing are the same.
[[nodiscard]] bool same_amount(IncidentAmount amount, const Beside& beside);

enum class IncidentFigure {
  escaped,      ///< [m3]
  outside,      ///< [m3] of it outside the containment
  steady_flow,  ///< [m3/s] once settled, with nothing shut
  peak_flow,    ///< [m3/s]
  isolated_at,  ///< [s] nothing more is fed; empty: not within the time counted
  sensor_at,    ///< [s] fuel stands at the sensor; empty: never, as the two below
  seal_at,      ///< [s] at the lowest entry seal
  brim_at,      ///< [s] at the brim of the sump
};
[[nodiscard]] IncidentAmount amount_of(IncidentFigure figure);

/// A figure of the first run, with the barriers as they are stated.
struct FigureRow {
  IncidentFigure figure = IncidentFigure::escaped;
  Beside value;
  bool differs = false;
};

/// What stands where when counting ends; of a tank and a line the change.
struct HolderRow {
  studies::Holder holder = studies::Holder::slab;
  Beside amount;  ///< [m3]
  bool differs = false;
};

/// What went one way by one cause. The ledger has every liter, so what it does not list in one of them is 0 there.
struct CauseAmount {
  studies::Holder from = studies::Holder::line;
  studies::Holder to = studies::Holder::slab;
  std::string product;
  std::string cause;
  Beside amount;  ///< [m3]
  bool differs = false;
};

/// An event of the first runs: the same thing happening to the same part, the first time, the second, and so on.
struct EventRow {
  studies::Happening what = studies::Happening::begins;
  std::string owner;
  std::string words;  ///< of A, or of B where it does not happen in A
  Beside time;        ///< [s]
  Beside escaped;     ///< [m3] by then
  bool differs = false;
};

/// What an open end gives.
struct EndRow {
  std::string product;
  Beside steady;   ///< [m3/s] with the pump running, nothing shut
  Beside gravity;  ///< [m3/s] with the pump off; empty: nothing runs by gravity
  bool differs = false;
};

/// A case of the barrier table, by its name.
struct CaseRow {
  std::string name;
  Beside escaped;  ///< [m3]; empty: this one has no such case, or its run failed
  Beside outside;  ///< [m3]
  bool differs = false;
};

/// A barrier of one part; empty: there is none in this one.
struct BarrierBeside {
  studies::Barrier barrier = studies::Barrier::shear_valve;
  std::string owner;
  std::optional<studies::BarrierState> a;
  std::optional<studies::BarrierState> b;
  bool differs = false;  ///< in state, in why, or in what it does
};

/// The rows of two incidents that both have a first run, in the order of A's result, then what only B has.
[[nodiscard]] std::vector<FigureRow> figure_rows(const studies::IncidentRun& a, const studies::IncidentRun& b);
[[nodiscard]] std::vector<HolderRow> holder_rows(const studies::IncidentRun& a, const studies::IncidentRun& b);
[[nodiscard]] std::vector<CauseAmount> cause_rows(const studies::IncidentRun& a, const studies::IncidentRun& b);
/// In the order of time: of the earlier of the two.
[[nodiscard]] std::vector<EventRow> event_rows(const studies::IncidentRun& a, const studies::IncidentRun& b);
[[nodiscard]] std::vector<EndRow> end_rows(const studies::IncidentResult& a, const studies::IncidentResult& b);
[[nodiscard]] std::vector<CaseRow> case_rows(const studies::IncidentResult& a, const studies::IncidentResult& b);
[[nodiscard]] std::vector<BarrierBeside> barrier_rows(const studies::IncidentResult& a,
                                                      const studies::IncidentResult& b);

}  // namespace forecourse::decide
