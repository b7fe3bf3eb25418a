#include "forecourse/decide/compare/incident/paired.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "forecourse/decide/compare/incident/incident_rows.h"
#include "forecourse/studies/incident/spread/ranks.h"

namespace forecourse::decide {
namespace {

using studies::IncidentSpread;

double mean_of(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double variance_of(const std::vector<double>& values) {
  const double mean = mean_of(values);
  double squares = 0.0;
  for (const double value : values) squares += (value - mean) * (value - mean);
  return squares / static_cast<double>(values.size());
}

std::vector<double> differences(const std::vector<double>& a, const std::vector<double>& b) {
  std::vector<double> out(a.size());
  for (std::size_t i = 0; i < a.size(); ++i) out[i] = b[i] - a[i];
  return out;
}

std::array<double, 3> quantiles(std::vector<double> values, const std::array<double, 3>& shares) {
  std::sort(values.begin(), values.end());
  std::array<double, 3> out{};
  for (std::size_t k = 0; k < out.size(); ++k) out[k] = studies::quantile(values, shares[k]);
  return out;
}

/// Runs that finished in both, at the same places.
struct Pairs {
  std::vector<double> escaped_a, escaped_b;
  std::vector<double> outside_a, outside_b;
};

Pairs finished_in_both(const IncidentSpread& a, const IncidentSpread& b) {
  Pairs out;
  for (std::size_t i = 0; i < std::min(a.escaped_by_run.size(), b.escaped_by_run.size()); ++i) {
    if (std::isnan(a.escaped_by_run[i]) || std::isnan(b.escaped_by_run[i])) continue;
    out.escaped_a.push_back(a.escaped_by_run[i]);
    out.escaped_b.push_back(b.escaped_by_run[i]);
    out.outside_a.push_back(a.environment_by_run[i]);
    out.outside_b.push_back(b.environment_by_run[i]);
  }
  return out;
}

void tell_shares(const Pairs& pairs, PairedSpread& out) {
  const double one = 1.0 / static_cast<double>(pairs.escaped_a.size());
  for (std::size_t i = 0; i < pairs.escaped_a.size(); ++i) {
    const double a = pairs.escaped_a[i], b = pairs.escaped_b[i];
    (same_amount(IncidentAmount::volume, {a, b}) ? out.same : b < a ? out.less : out.more) += one;
  }
}

void tell_inputs(const IncidentSpread& a, const IncidentSpread& b, PairedSpread& out) {
  const auto has = [](const std::vector<std::string>& all, const std::string& one) {
    return std::find(all.begin(), all.end(), one) != all.end();
  };
  for (const std::string& input : a.drawn) (has(b.drawn, input) ? out.drawn_in_both : out.only_a).push_back(input);
  for (const std::string& input : b.drawn) {
    if (!has(a.drawn, input)) out.only_b.push_back(input);
  }
}

}  // namespace

std::optional<PairedSpread> pair_spreads(const IncidentSpread& a, const IncidentSpread& b) {
  const Pairs pairs = finished_in_both(a, b);
  if (pairs.escaped_a.empty()) return std::nullopt;
  PairedSpread out;
  out.runs = std::min(a.runs, b.runs);
  out.counted = pairs.escaped_a.size();
  out.seed = a.seed;
  const std::vector<double> escaped = differences(pairs.escaped_a, pairs.escaped_b);
  out.escaped = quantiles(escaped, out.shares);
  out.outside = quantiles(differences(pairs.outside_a, pairs.outside_b), out.shares);
  out.mean = mean_of(escaped);
  out.deviation = std::sqrt(variance_of(escaped));
  out.deviation_apart = std::sqrt(variance_of(pairs.escaped_a) + variance_of(pairs.escaped_b));
  tell_shares(pairs, out);
  tell_inputs(a, b, out);
  return out;
}

}  // namespace forecourse::decide
