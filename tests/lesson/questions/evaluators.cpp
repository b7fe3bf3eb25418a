#include "lesson/questions/evaluators.h"

#include <algorithm>
#include <stdexcept>

namespace forecourse::test {
namespace {

template <class T>
const T& named(const std::vector<T>& all, const std::string& id) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const T& one) { return one.id.text == id; });
  if (found == all.end()) throw std::runtime_error("nothing is called " + id);
  return *found;
}

}  // namespace

const site::Tank& Case::tank() const { return named(site.tanks, question.at); }
const site::Dispenser& Case::dispenser(const std::string& id) const { return named(site.dispensers, id); }

const site::Hose& Case::hose(const std::string& id) const {
  return named(dispenser(id.substr(0, id.find('.'))).hoses, id);
}

std::vector<std::string> Case::hoses_of(const std::string& product) const {
  std::vector<std::string> out;
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      if (hose.product.text == product) out.push_back(hose.id.text);
    }
  }
  return out;
}

OwnNetwork& Case::network(const std::string& product) const {
  const auto made = networks.find(product);
  if (made != networks.end()) return made->second;
  for (const studies::SystemSummary& one : ground.studied.flow->systems) {
    if (one.product != product) continue;
    return networks.emplace(product, OwnNetwork(site, product, one.density, one.dynamic_viscosity)).first->second;
  }
  throw std::runtime_error("no system of " + product);
}

const std::string& Case::keyed() const {
  return std::find_if(question.options.begin(), question.options.end(),
                      [](const lesson::Option& one) { return one.right; })
      ->words.words;
}

const Evaluators& evaluators() {
  static const Evaluators all = [] {
    Evaluators out;
    add_tank_evaluators(out);
    add_flow_evaluators(out);
    add_escape_evaluators(out);
    add_other_evaluators(out);
    return out;
  }();
  return all;
}

}  // namespace forecourse::test
