#include "forecourse/studies/incident/spread/ranks.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

namespace forecourse::studies {
namespace {

std::vector<double> ranks_of(const std::vector<double>& values) {
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  std::vector<double> ranks(values.size());
  for (std::size_t i = 0; i < order.size();) {
    std::size_t end = i + 1;
    while (end < order.size() && values[order[end]] == values[order[i]]) ++end;
    const double mean = 0.5 * static_cast<double>(i + end - 1);
    for (std::size_t k = i; k < end; ++k) ranks[order[k]] = mean;
    i = end;
  }
  return ranks;
}

}  // namespace

double rank_correlation(const std::vector<double>& a, const std::vector<double>& b) {
  const std::vector<double> x = ranks_of(a), y = ranks_of(b);
  const double middle = 0.5 * (static_cast<double>(x.size()) - 1.0);
  double xy = 0.0, xx = 0.0, yy = 0.0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    xy += (x[i] - middle) * (y[i] - middle);
    xx += (x[i] - middle) * (x[i] - middle);
    yy += (y[i] - middle) * (y[i] - middle);
  }
  return xx > 0.0 && yy > 0.0 ? xy / std::sqrt(xx * yy) : 0.0;
}

double quantile(const std::vector<double>& sorted, double share) {
  const double place = share * static_cast<double>(sorted.size() - 1);
  const auto low = static_cast<std::size_t>(place);
  const std::size_t high = std::min(low + 1, sorted.size() - 1);
  return sorted[low] + (place - static_cast<double>(low)) * (sorted[high] - sorted[low]);
}

}  // namespace forecourse::studies
