#include "forecourse/lesson/failures/loss_text.h"

#include <cmath>

#include "forecourse/lesson/failures/scene.h"

namespace forecourse::lesson {
namespace {

template <class Q>
void scale(double factor, site::Maybe<Q>& value) {
  if (!value) return;
  for (Q* one : {&value->likely, &value->low, &value->high}) *one = factor * *one;
}

void scale(double factor, site::Maybe<double>& value) {
  if (!value) return;
  for (double* one : {&value->likely, &value->low, &value->high}) *one *= factor;
}

std::string quoted(const std::string& text) { return "\"" + text + "\""; }

std::string bare(double value) {
  std::string text = exact(value, "");
  text.pop_back();  // the blank before the unit
  return text;
}

}  // namespace

site::EnteredLoss times(double factor, const site::EnteredLoss& loss) {
  site::EnteredLoss out = loss;
  scale(factor, out.k);
  scale(factor, out.per_flow);
  scale(factor, out.per_flow_squared);
  scale(1.0 / std::sqrt(factor), out.cv);  // the loss goes with its inverse square
  scale(1.0 / std::sqrt(factor), out.kv);
  for (site::LossPoint& point : out.points) point.loss = factor * point.loss;
  return out;
}

std::string loss_text(const site::EnteredLoss& loss) {
  std::string inside;
  const auto add = [&](const char* key, const std::string& value) {
    inside += (inside.empty() ? "" : ", ") + std::string(key) + " = " + value;
  };
  if (loss.k) add("k", bare(loss.k->likely));
  if (loss.bore) add("bore", quoted(exact(loss.bore->likely.si(), "m")));
  if (loss.cv) add("cv", bare(loss.cv->likely));
  if (loss.kv) add("kv", bare(loss.kv->likely));
  if (loss.per_flow) add("per_flow", quoted(exact(loss.per_flow->likely.si(), "Pa.s/m^3")));
  if (loss.per_flow_squared) add("per_flow_squared", quoted(exact(loss.per_flow_squared->likely.si(), "Pa.s^2/m^6")));
  if (!loss.points.empty()) {
    std::string points;
    for (const site::LossPoint& point : loss.points) {
      points += (points.empty() ? "[" : ", [") + quoted(exact(point.flow.si(), "m3/s")) + ", " +
                quoted(exact(point.loss.si(), "Pa")) + "]";
    }
    add("points", "[" + points + "]");
  }
  return "{ " + inside + " }";
}

}  // namespace forecourse::lesson
