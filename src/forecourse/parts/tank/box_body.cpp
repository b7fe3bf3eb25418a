#include "forecourse/parts/tank/box_body.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "forecourse/parts/tank/panel_integral.h"

namespace forecourse::parts {

BoxBody::BoxBody(const BoxTank& tank)
    : tank_(tank),
      sine_(std::sin(tank.pitch)),
      cosine_(std::cos(tank.pitch)),
      roll_sine_(std::abs(std::sin(tank.roll))),
      roll_cosine_(std::cos(tank.roll)) {
  const double aside = tank.width * roll_sine_, up = tank.height * roll_cosine_;
  first_ = std::min(aside, up);
  second_ = std::max(aside, up);
  top_ = aside + up;
  chord_ = aside <= up ? tank.width / roll_cosine_ : tank.height / roll_sine_;
}

double BoxBody::full_level() const { return tank_.length * sine_ + top_ * cosine_; }

double BoxBody::section_area(double deep) const {
  if (deep <= 0.0) return 0.0;
  if (deep >= top_) return tank_.width * tank_.height;
  if (deep < first_) return 0.5 * chord_ * deep * deep / first_;
  if (deep <= second_) return 0.5 * chord_ * first_ + chord_ * (deep - first_);
  return tank_.width * tank_.height - 0.5 * chord_ * (top_ - deep) * (top_ - deep) / first_;
}

double BoxBody::section_width(double deep) const {
  if (deep <= 0.0 || deep >= top_) return 0.0;
  if (deep < first_) return chord_ * deep / first_;
  return deep <= second_ ? chord_ : chord_ * (top_ - deep) / first_;
}

template <class Section>
double BoxBody::sum(double level, const Section& section) const {
  const double deep = level / cosine_, slope = sine_ / cosine_;
  std::vector<double> splits{0.0, tank_.length};
  for (const double kink : {0.0, first_, second_, top_}) {
    const double x = slope > 0.0 ? (deep - kink) / slope : -1.0;
    if (x > 0.0 && x < tank_.length) splits.push_back(x);
  }
  std::sort(splits.begin(), splits.end());
  const auto& rule = gauss_rule<3>();
  double total = 0.0;
  for (std::size_t i = 0; i + 1 < splits.size(); ++i) {
    const double wide = splits[i + 1] - splits[i];
    for (std::size_t k = 0; k < 3; ++k)
      total += wide * rule.weight[k] * section(deep - slope * (splits[i] + wide * rule.at[k]));
  }
  return total;
}

double BoxBody::volume(double level) const {
  if (level <= 0.0) return 0.0;
  return sum(level, [this](double deep) { return section_area(deep); });
}

double BoxBody::surface_area(double level) const {
  if (level <= 0.0 || level >= full_level()) return 0.0;
  return sum(level, [this](double deep) { return section_width(deep); }) / cosine_;
}

double BoxBody::wetted_area(double level) const {
  if (level <= 0.0) return 0.0;
  const double near_end = section_area(level / cosine_);
  const double far_end = section_area((level - tank_.length * sine_) / cosine_);
  const double along = sum(level, [this](double deep) {
    // What is wet of a section's outline: two sides of each length, from their lower corner.
    const auto wet = [](double above, double rise, double length) {
      return length * (rise > 0.0 ? std::clamp(above / rise, 0.0, 1.0) : (above > 0.0 ? 1.0 : 0.0));
    };
    const double aside = tank_.width * roll_sine_, up = tank_.height * roll_cosine_;
    return wet(deep, aside, tank_.width) + wet(deep - up, aside, tank_.width) + wet(deep, up, tank_.height) +
           wet(deep - aside, up, tank_.height);
  });
  return near_end + far_end + along;
}

double BoxBody::depth_at(double x, double level) const {
  return ((level - x * sine_) / cosine_ - 0.5 * tank_.width * roll_sine_) / roll_cosine_;
}

double BoxBody::level_at(double x, double depth) const {
  return (depth * roll_cosine_ + 0.5 * tank_.width * roll_sine_) * cosine_ + x * sine_;
}

}  // namespace forecourse::parts
