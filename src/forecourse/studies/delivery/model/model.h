#pragma once

#include <span>
#include <vector>

#include "forecourse/solvers/sequence/model.h"
#include "forecourse/solvers/sequence/result.h"
#include "forecourse/studies/delivery/model/case.h"

namespace forecourse::studies::delivering {

namespace seq = solvers::sequence;

inline constexpr int most_drops = 8;  ///< as many flags as there are of each kind

/// How a delivery is stepped.
[[nodiscard]] seq::SequenceOptions told_options();

/// A delivery as a sequence: compartments of the truck, hoses, tanks; vapor of each ullage and of the truck, and the
/// air. Amounts of vapor are volumes at the atmosphere, those of an ullage and of the truck in excess of their room:
/// what liquid displaces comes as an excess, so that a pressure of a millionth of a pascal is no difference of two
/// large amounts. See docs/theory/delivery.md.
class Model {
 public:
  static constexpr bool stiff = true;

  enum class Told {  ///< what a guard is of
    truck_empty,
    hose_empty,
    drain_stalls,
    stalls,  // per drop
    restricts,
    closes,
    alarm,
    ninety,
    ninety_five,
    fills,
    covered,  // per tank
    lifts,
    draws,  // per vent
    truck_over,
    truck_under,
  };
  struct Guard {
    Told what = Told::fills;
    int of = 0;  ///< drop, tank or vent
  };
  enum Kind { acting, telling };
  enum Stop { all_done, stalled };

  /// \pre the case outlives the model; at most `most_drops` drops and tanks
  explicit Model(const Case& given);

  [[nodiscard]] int compartments() const { return room() + 1; }
  [[nodiscard]] int links() const { return emptying_link() + 1; }
  [[nodiscard]] static int auxiliaries() { return 0; }
  [[nodiscard]] int guard_count() const { return static_cast<int>(guards_.size()); }
  [[nodiscard]] seq::LinkEnds ends(int link) const;
  [[nodiscard]] seq::GuardRule guard_rule(int guard) const;
  [[nodiscard]] bool is_read(int compartment) const { return compartment < air(); }

  void flows(double t, const seq::SequenceView& v, std::span<double> q, std::span<double> rate) const;
  void guards(double t, const seq::SequenceView& v, std::span<const double> q, std::span<double> value) const;
  void on_event(const seq::Event& event, seq::Mutator& m) const;
  [[nodiscard]] seq::SequenceStart start() const;

  /// Ids of timed events; each carries its tank or drop as its value.
  static constexpr int stopped = 0;
  [[nodiscard]] static int driver(int tank) { return 1 + tank; }
  [[nodiscard]] static int starts(int drop) { return 1 + most_drops + drop; }
  [[nodiscard]] static bool is_driver(int id) { return id > stopped && id <= most_drops; }
  [[nodiscard]] static bool is_start(int id) { return id > most_drops; }

  [[nodiscard]] const Guard& guard(int i) const { return guards_[static_cast<std::size_t>(i)]; }
  [[nodiscard]] double ullage_pressure(const seq::SequenceView& v, int space) const;  ///< [Pa] gauge; 0: open
  [[nodiscard]] double truck_pressure(const seq::SequenceView& v) const;              ///< [Pa] gauge; 0: open
  /// Rate at the start of a drop, with no pressure in any vapor [m3/s].
  [[nodiscard]] double first_rate(int drop) const { return first_rate_[static_cast<std::size_t>(drop)]; }

  // Places of compartments and links.
  [[nodiscard]] int drops() const { return static_cast<int>(c_->drops.size()); }
  [[nodiscard]] int tanks() const { return static_cast<int>(c_->tanks.size()); }
  [[nodiscard]] int spaces() const { return static_cast<int>(c_->spaces.size()); }
  [[nodiscard]] int branches() const { return static_cast<int>(c_->branches.size()); }
  [[nodiscard]] int vents() const { return static_cast<int>(c_->vents.size()); }
  [[nodiscard]] static int truck(int drop) { return drop; }
  [[nodiscard]] int hose(int drop) const { return drops() + drop; }
  [[nodiscard]] int tank(int i) const { return 2 * drops() + i; }
  [[nodiscard]] int vapor(int space) const { return tank(tanks()) + space; }
  [[nodiscard]] int truck_vapor() const { return vapor(spaces()); }
  [[nodiscard]] int air() const { return truck_vapor() + 1; }
  [[nodiscard]] int source() const { return truck_vapor() + 2; }  ///< of vapor that the liquid gives off
  [[nodiscard]] int room() const { return truck_vapor() + 3; }    ///< that liquid takes and leaves
  [[nodiscard]] static int drop_link(int drop) { return drop; }
  [[nodiscard]] int drain_link(int drop) const { return drops() + drop; }
  [[nodiscard]] int vent_link(int vent) const { return 2 * drops() + vent; }
  [[nodiscard]] int branch_link(int branch) const { return vent_link(vents()) + branch; }
  [[nodiscard]] int return_link(int space) const { return branch_link(branches()) + space; }
  [[nodiscard]] int growth_link(int space) const { return return_link(spaces()) + space; }
  [[nodiscard]] int filling_link(int space) const { return growth_link(spaces()) + space; }
  [[nodiscard]] int emptying_link() const { return filling_link(spaces()); }

  // Flags.
  [[nodiscard]] static int runs(int drop) { return drop; }
  [[nodiscard]] static int drains(int drop) { return most_drops + drop; }
  [[nodiscard]] static int ended(int drop) { return 2 * most_drops + drop; }
  [[nodiscard]] static int shut(int drop) { return 3 * most_drops + drop; }
  [[nodiscard]] static int restricting(int tank) { return 4 * most_drops + tank; }
  [[nodiscard]] static int closed(int tank) { return 5 * most_drops + tank; }
  [[nodiscard]] static int full(int tank) { return 6 * most_drops + tank; }

 private:
  [[nodiscard]] double space_pressure(const seq::SequenceView& v, int tank) const;
  [[nodiscard]] double limit(const seq::SequenceView& v, int tank) const;
  [[nodiscard]] double drop_flow(const seq::SequenceView& v, int drop) const;
  [[nodiscard]] double drain_flow(const seq::SequenceView& v, int drop) const;
  [[nodiscard]] double vent_flow(const VentCase& vent, double pressure) const;
  [[nodiscard]] double vapor_flow(const parts::PathFlow& way, double from, double to) const;
  [[nodiscard]] bool hose_connected(const seq::SequenceView& v, int space) const;
  [[nodiscard]] double value_of(const Guard& guard, const seq::SequenceView& v, std::span<const double> q) const;
  void on_guard(const Guard& guard, seq::Mutator& m) const;
  void call_driver(int tank, seq::Mutator& m) const;
  void shut_truck(int drop, seq::Mutator& m) const;
  void drain(int drop, seq::Mutator& m) const;
  void end_drop(int drop, seq::Mutator& m) const;
  void begin_drop(int drop, seq::Mutator& m) const;
  void begin_waiting(seq::Mutator& m) const;

  const Case* c_;
  std::vector<Guard> guards_;
  std::vector<double> first_rate_;
};

}  // namespace forecourse::studies::delivering
