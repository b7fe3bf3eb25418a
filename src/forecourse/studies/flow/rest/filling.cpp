#include "forecourse/studies/flow/rest/filling.h"

#include <algorithm>
#include <cmath>

#include "forecourse/parts/inverse.h"
#include "forecourse/studies/flow/rest/fill_time.h"

namespace forecourse::studies {
namespace {

/// The flow at which a rising law loses a pressure, by Newton's method from a flow near it; 0 where that does not lead
/// there.
template <class LossAt>
double flow_near(const LossAt& loss_at, double pressure_loss, double flow) {
  constexpr int steps = 12;
  constexpr double close = 1e-7;  // of the flow: the next step would be far below rounding
  for (int step = 0; step < steps && flow > 0.0; ++step) {
    const parts::Loss here = loss_at(flow);
    const double change = (pressure_loss - here.pressure_loss) / here.slope;
    flow += change;
    if (std::abs(change) <= close * flow) return flow;
  }
  return 0.0;
}

bool same(const CoursePart& a, const CoursePart& b) {
  return a.element == b.element && a.start == b.start && a.end == b.end && a.limit == b.limit;
}

/// How many parts two courses have in common, from the pump on.
std::size_t in_common(const std::vector<CoursePart>& a, const std::vector<CoursePart>& b) {
  const auto [first, second] = std::mismatch(a.begin(), a.end(), b.begin(), b.end(), same);
  return static_cast<std::size_t>(first - a.begin());
}

}  // namespace

Filling::Filling(const network::PipingSystem& system, const FillCourse& course) {
  network::GatheredRun before;
  const double surface = system.weight_of(course.surface);
  double begin = 0.0;
  for (const CoursePart& part : course.parts) {
    if (part.volume > 0.0) {
      const double bottom = system.weight_of(part.start);
      Stage& stage = stages_.emplace_back();
      stage.begin = begin;
      stage.volume = part.volume;
      stage.bottom = bottom - surface;
      stage.climb = system.weight_of(part.end) - bottom;
      stage.limit = part.limit;
      stage.before = before;
      network::gather_into(stage.own, *part.element);
      begin += part.volume;
    }
    network::gather_into(before, *part.element);
  }
}

const Filling::Stage& Filling::stage_at(double filled) {
  while (stage_ > 0 && stages_[stage_].begin > filled) --stage_;
  while (stage_ + 1 < stages_.size() && stages_[stage_ + 1].begin <= filled) ++stage_;
  return stages_[stage_];
}

double Filling::flow(double filled) {
  if (stages_.empty()) return 0.0;
  const Stage& stage = stage_at(filled);
  const double share = std::clamp((filled - stage.begin) / stage.volume, 0.0, 1.0);
  const auto loss_at = [&](double q) {
    const solvers::EdgeLoss before = stage.before.loss(q);
    const solvers::EdgeLoss own = stage.own.loss(q);
    return parts::Loss{before.loss + share * own.loss, before.slope + share * own.slope};
  };
  const double wanted = -(stage.bottom + share * stage.climb);
  double flow = flow_near(loss_at, wanted, last_);
  if (!(flow > 0.0)) flow = parts::flow_anywhere(loss_at, wanted);
  if (!(flow > 0.0)) return 0.0;
  last_ = flow;
  return std::min(flow, stage.limit);
}

std::optional<double> FillTimes::time(const FillCourse& course) {
  const std::vector<double> marks = fill_marks(course);
  const std::size_t common = in_common(course.parts, parts_);
  const auto has_volume = [](const CoursePart& part) { return part.volume > 0.0; };
  const auto kept = std::count_if(parts_.begin(), parts_.begin() + static_cast<std::ptrdiff_t>(common), has_volume);
  times_.resize(static_cast<std::size_t>(kept));
  parts_ = course.parts;
  Filling filling(system_, course);
  for (std::size_t i = times_.size(); i + 1 < marks.size(); ++i) {
    const std::optional<double> before = i == 0 ? std::optional(0.0) : times_.back();
    std::optional<double> here;
    if (before)
      here = time_to_pump(
          {marks[i], marks[i + 1]}, [&](double v) { return filling.flow(v); }, std::nullopt);
    times_.push_back(here ? std::optional(*before + *here) : std::nullopt);
  }
  return times_.empty() ? 0.0 : times_.back();
}

}  // namespace forecourse::studies
