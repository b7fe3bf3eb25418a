#pragma once

#include <concepts>
#include <cstddef>
#include <span>

#include "forecourse/solvers/sequence/state.h"

namespace forecourse::solvers::sequence {

/// The way in which a guard's value passes zero when its event happens.
enum class Crossing { rising, falling, either };

/// When a guard's event happens, and when it may happen again.
///
/// A guard waits. It fires at the first moment its value is at zero or beyond, in its direction; one that is beyond
/// zero when the run begins fires at the start. Then it no longer waits, until its value has gone back by more than
/// `hysteresis` past zero; a latched one never waits again unless an event arms it.
/// `either` fires each time the value has passed zero by `hysteresis`, first one way and then the other.
struct GuardRule {
  Crossing crossing = Crossing::rising;
  int kind = 0;             ///< place in the order of events at one instant
  double hysteresis = 0.0;  ///< unit of the guard's value, >= 0
  bool latched = false;     ///< fires once
  bool waits = true;        ///< at the start
};

/// A compartment that fills and empties faster than anything else, and what is known of it.
struct Pack {
  bool allowed = false;  ///< false: keep it as it is, for now
  int compartment = 0;
  int peer = 0;      ///< gives and takes what its explicit transfers need
  double low = 0.0;  ///< amounts between which its net flow passes zero, falling in the amount
  double high = 0.0;
};

/// What a sequence is made of. `flows` is called some thousand times for a run: no allocation, no virtual call.
///
/// `m.flows(t, view, flows, rates)` writes the flow of each link (positive from its first to its second compartment)
/// and the rate of each auxiliary. The stepper takes the flow from one and gives it to the other, the same rounded
/// number; a law that knows one outlet of two writes q1 and q - q1 (see `split`).
/// `m.guards(t, view, flows, values)` writes a value for each guard.
/// `m.on_event(event, mutator)` does what the event does; it may keep marks in the state, and keeps none in itself.
///
/// Square roots of pressure differences are the model's business: see `regularized_root`. A compartment that runs dry
/// is a guard `amount - rest` that falls through zero and whose event closes the link. With a smoothed root the rest
/// must be above zero, as the flow fades out and never ends.
template <class M>
concept SequenceModel = requires(const M& m, int i, double t, const SequenceView& view, std::span<double> out,
                                 std::span<const double> flows, const Event& event, Mutator& mutator) {
  { m.compartments() } -> std::convertible_to<int>;
  { m.links() } -> std::convertible_to<int>;
  { m.auxiliaries() } -> std::convertible_to<int>;
  { m.guard_count() } -> std::convertible_to<int>;
  { m.ends(i) } -> std::convertible_to<LinkEnds>;
  { m.guard_rule(i) } -> std::convertible_to<GuardRule>;
  m.flows(t, view, out, out);
  m.guards(t, view, flows, out);
  m.on_event(event, mutator);
};

/// Optional: `m.pack(t, view)` names a pack that may become algebraic.
///
/// An algebraic pack has no differential equation: at each evaluation its amount is the one at which its net flow is
/// zero, found between `low` and `high`. The stepper switches when the pack's relaxation time is shorter than
/// `SequenceOptions::quiet_ratio` allows for the time to the next timed event, and the pack is as good as at its
/// balance; what is left over moves by a transfer of cause `cause_pack_settles`. As the balance shifts, the change
/// moves by transfers of cause `cause_pack_follows`. Any event after which the balance no longer holds makes it
/// dynamic again.
template <class M>
concept HasPack = requires(const M& m, double t, const SequenceView& view) {
  { m.pack(t, view) } -> std::convertible_to<Pack>;
};

/// Optional: `m.quiet(t, view)` tells that up to the next event the model knows its course in closed form, and
/// `m.advance_analytically(from, to, view, moved, auxiliaries)` writes what passes each link from `from` (the state in
/// `view`) to `to`, and the auxiliaries at `to`. A whole interval is then one step, however long; a guard that fires
/// inside it is still found, by shorter steps from the same start. Guards should be monotone over the interval.
template <class M>
concept HasAnalytic = requires(const M& m, double t, const SequenceView& view, std::span<double> out) {
  { m.quiet(t, view) } -> std::convertible_to<bool>;
  m.advance_analytically(t, t, view, out, out);
};

/// Optional: `static constexpr bool stiff = true` says that some compartments settle far faster than what is asked for.
/// Steps are then implicit, as long as the slow ones allow. Such a model has no auxiliaries, no pack and no closed
/// form.
template <class M>
concept IsStiff = requires {
  requires M::stiff;
};

/// Optional, of a stiff model: `m.is_read(compartment)` tells whether any law depends on it; the others are not varied.
template <class M>
concept TellsReaders = requires(const M& m, int i) {
  { m.is_read(i) } -> std::convertible_to<bool>;
};

}  // namespace forecourse::solvers::sequence
