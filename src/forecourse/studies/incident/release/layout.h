#pragma once

#include <cstddef>

namespace forecourse::studies::release {

/// An index into a list from a number of the sequence.
[[nodiscard]] constexpr std::size_t at(int i) { return static_cast<std::size_t>(i); }

/// Where what stands in the state of a run. Three compartments, six links and three auxiliaries for each broken end,
/// then those that all share.
struct Layout {
  int ends = 1;  ///< broken ends

  static constexpr int most_ends = 6;

  // compartments
  [[nodiscard]] static constexpr int tank(int f) { return 3 * f; }
  [[nodiscard]] static constexpr int line(int f) { return 3 * f + 1; }
  [[nodiscard]] static constexpr int above(int f) { return 3 * f + 2; }
  [[nodiscard]] constexpr int sump() const { return 3 * ends; }
  [[nodiscard]] constexpr int slab() const { return 3 * ends + 1; }
  [[nodiscard]] constexpr int ground() const { return 3 * ends + 2; }
  [[nodiscard]] constexpr int air() const { return 3 * ends + 3; }
  [[nodiscard]] constexpr int interceptor() const { return 3 * ends + 4; }
  [[nodiscard]] constexpr int vehicle() const { return 3 * ends + 5; }
  [[nodiscard]] constexpr int compartments() const { return 3 * ends + 6; }

  // links
  enum OfEnd { pumping, elsewhere, escape_sump, escape_slab, drain_sump, drain_slab, links_of_end };
  [[nodiscard]] static constexpr int link(int f, OfEnd which) { return links_of_end * f + which; }
  [[nodiscard]] constexpr int overflow() const { return links_of_end * ends; }
  [[nodiscard]] constexpr int seals() const { return links_of_end * ends + 1; }
  [[nodiscard]] constexpr int to_drain() const { return links_of_end * ends + 2; }
  [[nodiscard]] constexpr int evaporating() const { return links_of_end * ends + 3; }
  [[nodiscard]] constexpr int burning() const { return links_of_end * ends + 4; }
  [[nodiscard]] constexpr int links() const { return links_of_end * ends + 5; }

  // auxiliaries
  [[nodiscard]] static constexpr int trunk_flow(int f) { return 3 * f; }
  [[nodiscard]] static constexpr int escape_flow(int f) { return 3 * f + 1; }
  [[nodiscard]] static constexpr int leaked(int f) { return 3 * f + 2; }
  [[nodiscard]] constexpr int link_temperature() const { return 3 * ends; }
  [[nodiscard]] constexpr int auxiliaries() const { return 3 * ends + 1; }

  // marks
  enum MarkOfEnd { triggered_at, settled_in, settled_out, settled_hoses, settled_pressure, marks_of_end };
  [[nodiscard]] static constexpr int mark(int f, MarkOfEnd which) { return marks_of_end * f + which; }
  [[nodiscard]] constexpr int marks() const { return marks_of_end * ends; }

  // flags
  enum FlagOfEnd { pump_on, triggered, shut, settled, calm, drained, spent, held, flags_of_end };
  [[nodiscard]] static constexpr int flag(int f, FlagOfEnd which) { return flags_of_end * f + which; }
  [[nodiscard]] constexpr int full() const { return flags_of_end * ends; }
  [[nodiscard]] constexpr int at_seal() const { return flags_of_end * ends + 1; }
  [[nodiscard]] constexpr int at_drain() const { return flags_of_end * ends + 2; }
  [[nodiscard]] constexpr int stopped() const { return flags_of_end * ends + 3; }
  [[nodiscard]] constexpr int wet() const { return flags_of_end * ends + 4; }
  [[nodiscard]] constexpr int dry(int f) const { return flags_of_end * ends + 5 + f; }  ///< the tank gives no more

  // guards
  enum GuardOfEnd { runs_dry, runs_spent, check_shuts, crack_trips, guards_of_end };
  [[nodiscard]] static constexpr int guard(int f, GuardOfEnd which) { return guards_of_end * f + which; }
  enum Shared { sensor, seal, brim, drain, interceptor_full, reportable, link_parts, shared_guards };
  [[nodiscard]] constexpr int guard(Shared which) const { return guards_of_end * ends + which; }
  enum OfTank { tank_empty, level_down, guards_of_tank };
  [[nodiscard]] constexpr int guard(int f, OfTank which) const {
    return guards_of_end * ends + shared_guards + guards_of_tank * f + which;
  }
  /// Fuel stands at a sensor that sees nothing.
  [[nodiscard]] constexpr int unseen() const { return guards_of_end * ends + shared_guards + guards_of_tank * ends; }
  [[nodiscard]] constexpr int guards() const { return unseen() + 1; }
};

/// Above the opening's weight, or above that at which a tank feeds it, at which a line counts as spent [Pa].
inline constexpr double spent_pressure = 20.0;

/// Timed events; the id holds the broken end too.
enum class Timed {
  triggers,
  shuts,
  pump_starts,
  pump_stops,
  settles,
  begins_at_rest,
  emergency_stop,
  sensor_acts,
  sensor_wakes,
  detector
};
[[nodiscard]] constexpr int timed_id(Timed what, int f = 0) { return static_cast<int>(what) * Layout::most_ends + f; }
[[nodiscard]] constexpr Timed timed_of(int id) { return static_cast<Timed>(id / Layout::most_ends); }
[[nodiscard]] constexpr int end_of(int id) { return id % Layout::most_ends; }

/// Order of events at one instant: what shuts first, then what stops, then what is only told, then what settles.
enum EventKind { shutting, stopping, telling, settling };

/// Why an amount moved.
enum Cause {
  cause_open,        ///< nothing shuts it
  cause_closing,     ///< while the valve was closing
  cause_seat,        ///< past the shut valve
  cause_after_stop,  ///< the line springs back after the pump stopped
  cause_drains,      ///< runs out of what lies above
  cause_crack,
  cause_pumped,
  cause_elsewhere,
  cause_overflow,
  cause_seals,
  cause_runs_to_drain,
  cause_evaporates,
  cause_burns,
  cause_line_settles,  ///< the pump presses the line, or the line comes to its balance
  cause_relief,
  cause_runs_back,
};

}  // namespace forecourse::studies::release
