#include "forecourse/studies/incident/spread/spread.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <numeric>

#include "forecourse/site/uncertain_values.h"
#include "forecourse/solvers/sequence/run_many.h"
#include "forecourse/studies/incident/release/told_run.h"
#include "forecourse/studies/incident/spread/ranks.h"

namespace forecourse::studies {
namespace {

namespace seq = solvers::sequence;

/// What is kept of a run: enough for the figures, and the drawn inputs for their weights.
struct Kept {
  release::Outcome outcome;
  std::vector<double> drawn;
};

/// A run with all that its model looks at.
struct Drawn {
  std::shared_ptr<const release::Case> given;
  release::Model model;
  seq::SequenceStart start;
  std::vector<double> drawn;
};

/// Values of the site that move what feeds an opening, not the opening itself, and the height of a groove: they take a
/// new network for each run.
std::vector<std::size_t> of_piping(const std::vector<site::UncertainValue>& values) {
  std::vector<std::size_t> out;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const bool groove = values[i].path.find(".groove_") != std::string::npos ||
                        values[i].path.find(".loss_to_groove") != std::string::npos ||
                        values[i].path.find(".discharge_loss") != std::string::npos;
    if (site::can_move_flow(values[i]) || groove) out.push_back(i);
  }
  return out;
}

class ManyRuns {
 public:
  ManyRuns(const Scene& scene, const std::set<Barrier>& missing)
      : scene_(scene), missing_(missing), values_(site::uncertain_values(scene.site)), piping_(of_piping(values_)) {}

  IncidentSpread go(const Context& context) {
    IncidentSpread out;
    out.runs = scene_.options.runs;
    out.seed = scene_.options.seed;
    name_inputs(out);
    const auto make = [&](std::size_t i) { return drawn(i); };
    const auto keep = [](std::size_t, const Drawn& run, const seq::SequenceResult& result) {
      return Kept{release::outcome_of(*run.given, result), run.drawn};
    };
    const std::vector<Kept> kept = seq::run_many(out.runs, make, keep, release::many_options(), context);
    tell(kept, out);
    return out;
  }

 private:
  struct Input {
    std::string what;
    std::size_t place = 0;  ///< in `Drawn::drawn`
    bool illustrative = false;
  };

  /// The figures that vary, from one run drawn for their names.
  void name_inputs(IncidentSpread& out) {
    const seq::Draws draws(scene_.options.seed, 0);
    Inputs inputs(&draws);
    static_cast<void>(make_case(scene_, inputs, missing_));
    for (std::size_t i = 0; i < inputs.used().size(); ++i) {
      const InputUsed& used = inputs.used()[i];
      if (used.value.is_certain()) continue;
      inputs_.push_back({used.what, i, !used.entered && used.status == DefaultStatus::illustrative});
    }
    count_ = inputs.used().size();
    for (std::size_t k = 0; k < piping_.size(); ++k) inputs_.push_back({values_[piping_[k]].path, count_ + k, false});
    for (const Input& input : inputs_) out.drawn.push_back(input.what);
  }

  [[nodiscard]] Drawn drawn(std::size_t i) const {
    const seq::Draws draws(scene_.options.seed, i);
    Inputs inputs(&draws);
    if (piping_.empty()) {
      release::Case given = make_case(scene_, inputs, missing_);
      return run_of(std::move(given), inputs.taken());
    }
    std::vector<double> likely(values_.size());
    for (std::size_t k = 0; k < values_.size(); ++k) likely[k] = values_[k].likely;
    std::vector<double> of_site;
    for (const std::size_t k : piping_) {
      const site::UncertainValue& value = values_[k];
      likely[k] = inputs.take({value.path, {value.low, value.likely, value.high}, {}, true, {}, {}});
      of_site.push_back(likely[k]);
    }
    const site::Site varied = site::at_values(scene_.site, likely);
    const Groundwork ground = lay_ground(varied, scene_.options);
    Inputs others(&draws);
    release::Case given = make_case({varied, scene_.options, scene_.request, ground}, others, missing_);
    std::vector<double> taken = others.taken();
    taken.resize(count_);
    taken.insert(taken.end(), of_site.begin(), of_site.end());
    return run_of(std::move(given), std::move(taken));
  }

  static Drawn run_of(release::Case given, std::vector<double> taken) {
    auto held = std::make_shared<const release::Case>(std::move(given));
    const release::Model model(*held);
    return {held, model, model.start(), std::move(taken)};
  }

  void tell(const std::vector<Kept>& kept, IncidentSpread& out) const {
    std::vector<double> escaped;
    std::vector<std::size_t> finished;
    for (std::size_t i = 0; i < kept.size(); ++i) {
      const release::Outcome& outcome = kept[i].outcome;
      constexpr double none = std::numeric_limits<double>::quiet_NaN();
      out.escaped_by_run.push_back(outcome.finished ? outcome.escaped : none);
      out.environment_by_run.push_back(outcome.finished ? outcome.to_environment : none);
      if (!outcome.finished) continue;
      finished.push_back(i);
      escaped.push_back(outcome.escaped);
    }
    out.failed = kept.size() - finished.size();
    if (escaped.empty()) return;
    out.mean = std::accumulate(escaped.begin(), escaped.end(), 0.0) / static_cast<double>(escaped.size());
    std::vector<double> sorted = escaped;
    std::sort(sorted.begin(), sorted.end());
    for (std::size_t k = 0; k < out.shares.size(); ++k) out.quantiles[k] = quantile(sorted, out.shares[k]);
    constexpr std::size_t points = 41;
    for (std::size_t k = 0; k < points; ++k) {
      const double share = static_cast<double>(k) / static_cast<double>(points - 1);
      out.exceeded.push_back(quantile(sorted, share));
      out.exceedance.push_back(1.0 - share);
    }
    std::vector<double> environment;
    environment.reserve(finished.size());
    for (const std::size_t i : finished) environment.push_back(kept[i].outcome.to_environment);
    std::sort(environment.begin(), environment.end());
    for (std::size_t k = 0; k < out.shares.size(); ++k)
      out.environment_quantiles[k] = quantile(environment, out.shares[k]);
    constexpr double noise = 1e-4;  // of the mean: what tolerances of single runs leave
    if (sorted.back() - sorted.front() > noise * out.mean) weigh(kept, finished, escaped, out);
  }

  void weigh(const std::vector<Kept>& kept, const std::vector<std::size_t>& finished,
             const std::vector<double>& escaped, IncidentSpread& out) const {
    double entered = 0.0, stand_in = 0.0;
    for (const Input& input : inputs_) {
      std::vector<double> values;
      values.reserve(finished.size());
      for (const std::size_t i : finished) values.push_back(kept[i].drawn[input.place]);
      const double weight = rank_correlation(values, escaped);
      out.weights.push_back({input.what, weight, input.illustrative});
      (input.illustrative ? stand_in : entered) += weight * weight;
    }
    std::stable_sort(out.weights.begin(), out.weights.end(), [](const InputWeight& a, const InputWeight& b) {
      return std::abs(a.rank_correlation) > std::abs(b.rank_correlation);
    });
    out.mainly_illustrative = stand_in > entered;
  }

  const Scene& scene_;
  const std::set<Barrier>& missing_;
  std::vector<site::UncertainValue> values_;
  std::vector<std::size_t> piping_;
  std::vector<Input> inputs_;
  std::size_t count_ = 0;
};

}  // namespace

IncidentSpread incident_spread(const Scene& scene, const std::set<Barrier>& missing, const Context& context) {
  return ManyRuns(scene, missing).go(context);
}

}  // namespace forecourse::studies
