#include "forecourse/network/meter/meter_proving.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace forecourse::network {
namespace {

DrawSet set_of(const std::vector<double>& errors) {
  DrawSet out;
  out.count = static_cast<int>(errors.size());
  if (errors.empty()) return out;
  const auto n = static_cast<double>(errors.size());
  double sum = 0.0;
  for (const double error : errors) sum += error;
  out.mean = sum / n;
  if (errors.size() < 2) return out;
  double square = 0.0;
  for (const double error : errors) square += (error - *out.mean) * (error - *out.mean);
  out.deviation = std::sqrt(square / (n - 1.0));
  out.standard_error = *out.deviation / std::sqrt(n);
  const auto [least, most] = std::minmax_element(errors.begin(), errors.end());
  out.repeatability = *most - *least;
  return out;
}

void judge(MeterProving& proving) {
  constexpr double slow_share = 0.5;
  std::vector<double> all;
  double most = 0.0;
  bool every_flow = true;
  for (const MeterDraw& draw : proving.draws) {
    if (!draw.error) continue;
    all.push_back(*draw.error);
    every_flow = every_flow && draw.entered.flow.has_value();
    if (draw.entered.flow) most = std::max(most, draw.entered.flow->si());
  }
  proving.all = set_of(all);
  if (!every_flow || all.empty()) return;
  std::vector<double> fast;
  std::vector<double> slow;
  for (const MeterDraw& draw : proving.draws) {
    if (draw.error) (draw.entered.flow->si() < slow_share * most ? slow : fast).push_back(*draw.error);
  }
  proving.fast = set_of(fast);
  proving.slow = set_of(slow);
}

}  // namespace

bool is_as_left(const site::records::Proving& draw) { return draw.state.text == "as-left"; }

std::vector<MeterProving> meter_provings(const site::Site& site, const std::vector<site::records::Proving>& draws,
                                         const std::optional<double>& expansion) {
  using Key = std::tuple<std::string, int, int, int, bool>;
  std::map<Key, MeterProving> found;
  for (const site::records::Proving& draw : draws) {
    const site::Date& day = draw.at.day;
    MeterProving& proving = found[Key{draw.hose.text, day.year, day.month, day.day, is_as_left(draw)}];
    proving.hose = draw.hose.text;
    proving.day = day;
    proving.as_left = is_as_left(draw);
    proving.draws.push_back(meter_draw(site, draw, expansion));
  }
  std::vector<MeterProving> out;
  for (auto& [key, proving] : found) {
    judge(proving);
    out.push_back(std::move(proving));
  }
  return out;
}

}  // namespace forecourse::network
