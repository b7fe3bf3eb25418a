#pragma once

#include <optional>
#include <span>
#include <vector>

#include "forecourse/solvers/sequence/model.h"
#include "forecourse/studies/incident/release/balance.h"
#include "forecourse/studies/incident/release/layout.h"

namespace forecourse::studies::release {

namespace seq = solvers::sequence;

/// Fuel out of broken ends, as a sequence.
///
/// A line is a spring at the place where it is broken, fed by the network's solved states (`network::Feed`) through a
/// column that has to be accelerated, and emptied through the column of the riser. For 3 s after each event that moves
/// it, line and columns are followed; then it is settled: the balance of feed and opening, constant until the next
/// event, but where the level in the tank moves it. After a pump stop the line springs back until its pressure is that
/// of the opening, or until the tank feeds it by gravity. A tank that is empty feeds nothing.
/// See docs/theory/incident.md.
class Model {
 public:
  explicit Model(const Case& given);

  static constexpr double follows_for = 3.0;  ///< [s] after an event

  [[nodiscard]] const Layout& layout() const { return layout_; }
  [[nodiscard]] int compartments() const { return layout_.compartments(); }
  [[nodiscard]] int links() const { return layout_.links(); }
  [[nodiscard]] int auxiliaries() const { return layout_.auxiliaries(); }
  [[nodiscard]] int guard_count() const { return layout_.guards(); }
  [[nodiscard]] seq::LinkEnds ends(int link) const { return ends_[at(link)]; }
  [[nodiscard]] seq::GuardRule guard_rule(int guard) const;

  void flows(double t, const seq::SequenceView& v, std::span<double> q, std::span<double> rate) const;
  void guards(double t, const seq::SequenceView& v, std::span<const double> q, std::span<double> value) const;
  void on_event(const seq::Event& event, seq::Mutator& m) const;

  [[nodiscard]] bool quiet(double t, const seq::SequenceView& v) const;
  void advance_analytically(double from, double to, const seq::SequenceView& v, std::span<double> moved,
                            std::span<double> auxiliaries) const;

  /// The line pressed as before the incident, everything where it was.
  [[nodiscard]] seq::SequenceStart start() const;

  /// Flows and pressure of one broken end as it is.
  [[nodiscard]] Flows now(int f, double t, const seq::SequenceView& v) const;

  /// Gauge pressure in the line of the first end, at the height of its opening [Pa]. Empty where it is not determined:
  /// in a line whose spring is not known, while nothing feeds it and it is shut.
  [[nodiscard]] std::optional<double> line_pressure(double t, const seq::SequenceView& v) const;
  /// The same just before it happens: as entered, else that at which pump or tank hold the line.
  [[nodiscard]] std::optional<double> pressure_before() const;

 private:
  /// Pressure at which a line stands before it happens [Pa] piezometric; empty where it is not determined. One that
  /// springs and is checked keeps what its pump left.
  [[nodiscard]] std::optional<double> begins_at(int f) const;
  // What `start` takes from one broken end.
  void start_causes(int f, seq::SequenceStart& s) const;
  void start_state(int f, seq::SequenceStart& s) const;
  void start_events(int f, seq::SequenceStart& s) const;

  [[nodiscard]] const Broken& broken(int f) const { return c_->broken[static_cast<std::size_t>(f)]; }
  [[nodiscard]] seq::LinkEnds ends_of(int link) const;
  [[nodiscard]] const network::Feed& feed(int f, const seq::SequenceView& v) const;
  /// Pumps off, and the tank stands high enough to feed the place.
  [[nodiscard]] bool by_gravity(int f, const seq::SequenceView& v) const;
  /// By how much less than at first the tank feeds, for the liquid that is gone [Pa].
  [[nodiscard]] double fall(int f, const seq::SequenceView& v) const;
  /// Down to which pressure a line springs back: that of the opening, or that at which the tank feeds it [Pa].
  [[nodiscard]] double floor(int f, const seq::SequenceView& v) const;
  [[nodiscard]] bool level_moves(int f, const seq::SequenceView& v) const;
  /// What feed and opening come to, as they stand.
  [[nodiscard]] Flows balanced(int f, const seq::SequenceView& v) const;
  [[nodiscard]] double open_share(int f, double t, const seq::SequenceView& v) const;
  [[nodiscard]] double out_at(int f, double t, const seq::SequenceView& v, double pressure) const;
  [[nodiscard]] bool leaks_only(int f, const seq::SequenceView& v) const;
  [[nodiscard]] bool follows_columns(int f, const seq::SequenceView& v) const;
  void end_flows(int f, double t, const seq::SequenceView& v, std::span<double> q, std::span<double> rate) const;
  void shared_flows(const seq::SequenceView& v, std::span<double> q) const;
  void pass_on(const seq::SequenceView& v, std::span<double> q) const;

  void on_timed(const seq::Event& event, seq::Mutator& m) const;
  void on_end_guard(int f, int which, seq::Mutator& m) const;
  void on_shared_guard(int which, seq::Mutator& m) const;
  void trigger(int f, seq::Mutator& m) const;
  void shut(int f, seq::Mutator& m) const;
  void start_pump(int f, seq::Mutator& m) const;
  void stop_pump(int f, seq::Mutator& m) const;
  void stop_all(seq::Mutator& m) const;
  void disturb(int f, seq::Mutator& m) const;
  void settle(int f, seq::Mutator& m) const;
  void run_dry(int f, seq::Mutator& m) const;
  void catch_up(int f, seq::Mutator& m) const;
  void rest_at(int f, const Flows& flows, seq::Mutator& m) const;

  const Case* c_;
  Layout layout_;
  std::vector<seq::LinkEnds> ends_;  ///< per link
  std::vector<Flows> balances_;      ///< per end: see `balance_index`
  network::Feed nothing_;            ///< of a tank that is empty
};

}  // namespace forecourse::studies::release
