#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/lesson/ground.h"
#include "forecourse/lesson/questions/question.h"
#include "lesson/questions/own_network.h"
#include "lesson/questions/own_tank.h"

namespace forecourse::test {

/// A question of a station, and what its keyed answer is held against.
struct Case {
  const site::Site& site;
  const lesson::Ground& ground;
  const lesson::Question& question;
  std::map<std::string, OwnNetwork>& networks;  ///< by product, made once a station

  [[nodiscard]] const site::Tank& tank() const;  ///< of the question
  [[nodiscard]] OwnNetwork& network(const std::string& product) const;
  [[nodiscard]] const site::Hose& hose(const std::string& id) const;
  [[nodiscard]] const site::Dispenser& dispenser(const std::string& id) const;
  [[nodiscard]] std::vector<std::string> hoses_of(const std::string& product) const;
  [[nodiscard]] double given(std::size_t index) const { return question.asks.values.at(index).value; }
  [[nodiscard]] const std::string& keyed() const;  ///< words of the right option
};

/// How the keyed answer of a kind is found another way than the question finds it.
struct Evaluator {
  std::string independent;  ///< why this is another way
  double tolerance = 0.0;   ///< of the value below, share of it [1]
  /// The answer [SI]; empty: this case is not one that the other way can do.
  std::function<std::optional<double>(const Case&)> value = nullptr;
  /// The words of the right option.
  std::function<std::string(const Case&)> words = nullptr;
  /// What each item is ordered by, rising; NaN: not known.
  std::function<double(const Case&, const lesson::Phrase& item)> key = nullptr;
};

using Evaluators = std::map<std::string, Evaluator>;
void add_tank_evaluators(Evaluators& out);
void add_flow_evaluators(Evaluators& out);
void add_escape_evaluators(Evaluators& out);
void add_other_evaluators(Evaluators& out);
[[nodiscard]] const Evaluators& evaluators();

}  // namespace forecourse::test
