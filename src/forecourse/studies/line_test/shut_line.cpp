#include "forecourse/studies/line_test/shut_line.h"

#include <algorithm>
#include <cmath>

namespace forecourse::studies {
namespace {

constexpr std::size_t steps_of_test = 200;

/// The gauge pressure at which line and pocket hold a volume more than at first.
double pressure_of(const ShutLine& line, double stored) {
  const double first = line.first_pressure + line.atmosphere;
  const double air = line.pocket * first;
  const double b = line.compliance * first + stored - line.pocket;
  return (b + std::sqrt(b * b + 4.0 * line.compliance * air)) / (2.0 * line.compliance) - line.atmosphere;
}

double stored_at(const ShutLine& line, double gauge) {
  const double first = line.first_pressure + line.atmosphere;
  const double pressure = gauge + line.atmosphere;
  return line.compliance * (pressure - first) + line.pocket - line.pocket * first / pressure;
}

}  // namespace

Fading fading_of(const parts::CoolingLaw& law, double wait, double duration) {
  Fading out{duration / static_cast<double>(steps_of_test), {}};
  for (std::size_t i = 0; i <= steps_of_test; ++i) {
    out.share.push_back(parts::remaining(law, wait + out.step * static_cast<double>(i)));
  }
  return out;
}

Fading no_fading(double duration) {
  return {duration / static_cast<double>(steps_of_test), std::vector<double>(steps_of_test + 1, 0.0)};
}

ShutLineCourse course_of(const ShutLine& line, const parts::LeakLaw& leak, const Fading& fading) {
  constexpr double largest_change = 0.01;  // of the first pressure in a part of a step
  constexpr double most_parts = 500.0;
  ShutLineCourse out;
  out.pressure.push_back(line.first_pressure);
  double stored = 0.0;
  for (std::size_t i = 0; i + 1 < fading.share.size(); ++i) {
    const double time = fading.step * static_cast<double>(i);
    if (out.to_air_at) {
      out.pressure.push_back(0.0);
      continue;
    }
    const double shrunk = line.volume * line.shrinks * line.warmer * (fading.share[i] - fading.share[i + 1]);
    const double lost = leak_rate(leak, out.pressure.back()) * fading.step;
    const double change = (std::abs(shrunk) + lost) / (line.compliance * std::max(line.first_pressure, 1.0));
    const double parts = std::clamp(std::ceil(change / largest_change), 1.0, most_parts);
    const double part = fading.step / parts;
    for (double k = 0.0; k < parts && !out.to_air_at; k += 1.0) {
      const double now = leak_rate(leak, pressure_of(line, stored));
      const double half = stored - 0.5 * (now * part + shrunk / parts);
      stored -= leak_rate(leak, pressure_of(line, half)) * part + shrunk / parts;
      if (pressure_of(line, stored) <= 0.0) out.to_air_at = time + part * (k + 1.0);
      if (line.relief && pressure_of(line, stored) > *line.relief) {
        stored = stored_at(line, *line.relief);
        if (!out.relieved_at) out.relieved_at = time + part * (k + 1.0);
      }
    }
    out.pressure.push_back(out.to_air_at ? 0.0 : pressure_of(line, stored));
  }
  return out;
}

std::optional<double> leak_for_drop(const ShutLine& line, double exponent, const Fading& fading, double drop,
                                    double most) {
  const auto drop_with = [&](double leak) {
    const parts::LeakLaw law = parts::leak_law({line.first_pressure, leak}, exponent);
    return line.first_pressure - course_of(line, law, fading).pressure.back();
  };
  if (drop_with(0.0) >= drop) return 0.0;
  if (drop_with(most) < drop) return std::nullopt;
  double low = 0.0;
  double high = most;
  constexpr int halvings = 50;
  for (int i = 0; i < halvings && high - low > 1e-6 * high; ++i) {
    const double middle = 0.5 * (low + high);
    (drop_with(middle) < drop ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

}  // namespace forecourse::studies
