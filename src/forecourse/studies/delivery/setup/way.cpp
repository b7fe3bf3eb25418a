#include <numbers>

#include "forecourse/network/drop_tube.h"
#include "forecourse/network/escape/broken_end.h"
#include "forecourse/studies/delivery/setup/setup.h"

namespace forecourse::studies::delivering {
namespace {

using network::Element;
using network::ElementKind;
using network::PartLaws;

constexpr double most = 0.1;  ///< [m3/s], far above any gravity drop

double circle(double bore) { return 0.25 * std::numbers::pi * bore * bore; }

/// Parts one after the other; a loss without a bore of its own is on that of the pipe before it.
class Run {
 public:
  explicit Run(PartLaws& laws) : laws_(laws) {}
  void add(const std::string& what, const std::optional<site::Pipe>& pipe) {
    if (!pipe) return;
    laws_.add_pipe(ElementKind::line, what, what, *pipe, elements);
    if (const double known = PartLaws::known_bore(*pipe); known > 0.0) bore = known;
  }
  void add(const std::string& what, const std::optional<site::EnteredLoss>& loss) {
    if (loss) laws_.add_loss(ElementKind::connection, what, what, *loss, bore, elements);
  }

  std::vector<Element> elements;
  double bore = 0.0;

 private:
  PartLaws& laws_;
};

}  // namespace

parts::PathFlow path_of(const std::vector<Element>& elements, double density, double bore) {
  const double exit = bore > 0.0 ? network::opening_loss(density, circle(bore), 1.0) : 0.0;
  return parts::PathFlow(
      [&](double flow) {
        parts::Loss sum = loss(parts::QuadraticLaw{0.0, exit}, flow);
        for (const Element& element : elements) {
          const parts::Loss one = network::loss(element, flow);
          sum.pressure_loss += one.pressure_loss;
          sum.slope += one.slope;
        }
        return sum;
      },
      most);
}

void set_way(const network::Fluid& liquid, std::size_t i, Setup& setup) {
  DropCase& drop = setup.everything.drops[i];
  const site::Delivery& d = *setup.delivery;
  const site::Fill* fill = setup.tanks[static_cast<std::size_t>(drop.tank)].fill;
  std::vector<Diagnostic> problems;
  PartLaws laws(liquid, setup.defaults, problems);
  Run run(laws);
  run.add("pipe of the truck", d.truck_pipe);
  run.add("delivery hose", d.hose);
  run.add("elbow", d.elbow);
  if (fill != nullptr) {
    run.add("pipe of the fill", fill->pipe);
    run.add("fill", fill->loss);
    if (fill->drop_tube) run.add("drop tube", std::optional(network::pipe_of(*fill->drop_tube)));
    if (fill->overfill_valve) run.add("overfill valve", fill->overfill_valve->loss);
  }
  if (!(run.bore > 0.0)) laws.problem("the bore of the delivery hose is not entered", d.where, "add hose = { bore }");
  if (!problems.empty()) {
    setup.problem = problems.front().message + ": " + problems.front().hint;
    return;
  }
  drop.way = path_of(run.elements, liquid.density, run.bore);
}

}  // namespace forecourse::studies::delivering
