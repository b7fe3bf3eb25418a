#include "forecourse/parts/tank/equalizing.h"

#include <algorithm>
#include <cmath>

namespace forecourse::parts {
namespace {

std::vector<double> surfaces_of(const JoinedTanks& tanks, const std::vector<double>& volumes) {
  std::vector<double> out;
  for (std::size_t i = 0; i < volumes.size(); ++i) out.push_back(tanks.tanks[i].surface_of(volumes[i]));
  return out;
}

/// What each tank gains [m3/s].
std::vector<double> gains(const JoinedTanks& tanks, const std::vector<double>& volumes) {
  const std::vector<double> surfaces = surfaces_of(tanks, volumes);
  std::vector<double> out;
  for (const JoinedTanks::Tank& tank : tanks.tanks) out.push_back(-tank.draw);
  for (const JoinedTanks::Bar& bar : tanks.bars) {
    const double flow = bar.flow_of(surfaces[bar.from] - surfaces[bar.to]);
    out[bar.from] -= flow;
    out[bar.to] += flow;
  }
  return out;
}

std::vector<double> moved(const std::vector<double>& from, const std::vector<double>& rate, double step) {
  std::vector<double> out = from;
  for (std::size_t i = 0; i < out.size(); ++i) out[i] += step * rate[i];
  return out;
}

/// Steps of Bogacki and Shampine from one moment to the next; `step` is kept from moment to moment.
class Stepper {
 public:
  Stepper(const JoinedTanks& tanks, double step) : tanks_(tanks), step_(step) {}

  void advance(std::vector<double>& volumes, double time) {
    constexpr double close = 1e-9;  // [m3] of one step
    constexpr int most_steps = 100000;
    double left = time;
    for (int i = 0; i < most_steps && left > 0.0; ++i) {
      const double step = std::min(step_, left);
      const auto k1 = gains(tanks_, volumes);
      const auto k2 = gains(tanks_, moved(volumes, k1, 0.5 * step));
      const auto k3 = gains(tanks_, moved(volumes, k2, 0.75 * step));
      std::vector<double> next = volumes;
      for (std::size_t k = 0; k < next.size(); ++k) next[k] += step * (2.0 * k1[k] + 3.0 * k2[k] + 4.0 * k3[k]) / 9.0;
      const auto k4 = gains(tanks_, next);
      double miss = 0.0;
      for (std::size_t k = 0; k < next.size(); ++k)
        miss = std::max(miss, std::abs(step * (-5.0 * k1[k] / 72.0 + k2[k] / 12.0 + k3[k] / 9.0 - k4[k] / 8.0)));
      constexpr double most_growth = 4.0, least = 0.2, careful = 0.9;
      const double growth =
          miss > 0.0 ? std::clamp(careful * std::cbrt(close / miss), least, most_growth) : most_growth;
      constexpr double shortest = 1e-6;  // [s]
      if (miss <= close || step <= shortest) {
        volumes = std::move(next);
        left -= step;
      }
      step_ = std::max(shortest, step * growth);
    }
  }

 private:
  const JoinedTanks& tanks_;
  double step_;
};

}  // namespace

std::vector<JoinedMoment> joined_course(const JoinedTanks& tanks, std::vector<double> volumes, double end, int moments,
                                        const std::function<bool(const JoinedMoment&)>& stop) {
  std::vector<JoinedMoment> out{{0.0, volumes, surfaces_of(tanks, volumes)}};
  const double each = end / moments;
  Stepper stepper(tanks, std::min(1.0, each));
  for (int i = 1; i <= moments; ++i) {
    stepper.advance(volumes, each);
    out.push_back({each * i, volumes, surfaces_of(tanks, volumes)});
    if (stop && stop(out.back())) break;
  }
  return out;
}

std::vector<double> bar_flows(const JoinedTanks& tanks, const JoinedMoment& moment) {
  std::vector<double> out;
  for (const JoinedTanks::Bar& bar : tanks.bars)
    out.push_back(bar.flow_of(moment.surfaces[bar.from] - moment.surfaces[bar.to]));
  return out;
}

}  // namespace forecourse::parts
