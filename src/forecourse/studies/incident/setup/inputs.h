#pragma once

#include <string>
#include <vector>

#include "forecourse/solvers/sequence/random/draws.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::studies {

/// Takes the figures that an incident needs, notes where each comes from, and draws it where a draw is asked for.
/// The same figure has the same name in every run, and the name is what its draw belongs to.
class Inputs {
 public:
  /// \param draws null: the likely value of each
  explicit Inputs(const solvers::sequence::Draws* draws = nullptr) : draws_(draws) {}

  /// A figure as entered, else the value that stands in for it.
  template <class Q>
  double take(const std::string& what, const site::Maybe<Q>& entered, const Spread& other, DefaultStatus status,
              const char* unit, const char* source) {
    if (entered) return take({what, spread_of(*entered), unit, true, status, {}});
    return take({what, other, unit, false, status, source});
  }
  /// A figure that the user entered; empty if he did not.
  template <class Q>
  std::optional<double> take(const std::string& what, const site::Maybe<Q>& entered, const char* unit) {
    if (!entered) return std::nullopt;
    return take({what, spread_of(*entered), unit, true, DefaultStatus::illustrative, {}});
  }
  double take(InputUsed used);

  [[nodiscard]] const std::vector<InputUsed>& used() const { return used_; }
  [[nodiscard]] const std::vector<double>& taken() const { return taken_; }  ///< in the order of `used`

  template <class Q>
  [[nodiscard]] static Spread spread_of(const site::Entered<Q>& entered) {
    if constexpr (requires { entered.likely.si(); }) {
      return {entered.low.si(), entered.likely.si(), entered.high.si()};
    } else {
      return {entered.low, entered.likely, entered.high};
    }
  }

 private:
  const solvers::sequence::Draws* draws_;
  std::vector<InputUsed> used_;
  std::vector<double> taken_;
};

}  // namespace forecourse::studies
