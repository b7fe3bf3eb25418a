#include "forecourse/studies/delivery/delivery.h"

#include <algorithm>
#include <utility>

#include "forecourse/site/uncertain_values.h"
#include "forecourse/studies/delivery/told.h"

namespace forecourse::studies {
namespace {

using delivering::Setup;
using delivering::Variation;

std::string words_of(const DeliveryOptions& options) {
  std::string out;
  const auto add = [&](const std::string& text) { out += (out.empty() ? "" : ", ") + text; };
  for (const DeliveryPart part : options.without) add(std::string("without ") + word(part));
  for (const std::string& vent : options.blocked) add(vent + " blocked");
  std::replace(out.begin(), out.end(), '-', ' ');
  return out.empty() ? "as entered" : out;
}

double highest_pressure(const DeliveryRun& run) {
  double out = 0.0;
  for (const UllageTold& ullage : run.ullages) out = std::max(out, ullage.highest_pressure);
  return out;
}

/// The others are of the piping to the dispensers, or of what goes wrong.
bool can_move_delivery(const site::UncertainValue& value) {
  return value.table == "delivery" || value.table == "tank" || value.table == "product" || value.table == "site";
}

void widen(std::optional<DeliveryRange>& range, double value) {
  if (!range) range = DeliveryRange{value, value};
  range->low = std::min(range->low, value);
  range->high = std::max(range->high, value);
}

class Study {
 public:
  Study(const site::Site& site, const DeliveryOptions& options, const Context& context)
      : site_(site), options_(options), context_(context), asked_{options.without, options.blocked, false, 0} {}

  DeliveryResult study() {
    out_.options = options_;
    out_.version = FORECOURSE_VERSION;
    Setup setup = delivering::set_up(site_, options_, asked_);
    out_.problem = setup.problem;
    if (setup.delivery != nullptr) {
      out_.delivery = setup.delivery->id.text;
      out_.where = setup.delivery->where;
    }
    tell_inputs(setup);
    if (!out_.problem.empty()) return std::move(out_);
    out_.runs.push_back(delivering::tell_run(setup, options_.charts, context_));
    out_.runs.back().name = words_of(options_);
    if (options_.table) add_table(setup);
    if (options_.spans) tell_spans();
    return std::move(out_);
  }

 private:
  void tell_inputs(const Setup& setup) {
    out_.vapor_density = setup.vapor.density;
    out_.vapor_viscosity = setup.vapor.dynamic_viscosity;
    out_.vapor_growth = setup.everything.growth;
    out_.defaults = setup.defaults;
    out_.notes = setup.notes;
    for (const std::string& text : setup.warnings) out_.warnings.push_back({Severity::warning, text, {}, {}, {}});
  }

  void add(const char* name, const Variation& variation) {
    const Setup setup = delivering::set_up(site_, options_, variation);
    if (!setup.problem.empty()) return;
    out_.runs.push_back(delivering::tell_run(setup, options_.charts, context_));
    out_.runs.back().name = name;
  }

  /// The same with other ways for the vapor, and with two drops at once where there are two tanks.
  void add_table(const Setup& setup) {
    const bool returns = setup.everything.truck_closed && !setup.everything.spaces.empty();
    const bool vents = !setup.everything.vents.empty();
    if (returns && vents) {
      Variation alone = asked_;
      alone.all_blocked = true;
      add("vapor return alone", alone);
      Variation vent = asked_;
      vent.without.push_back(DeliveryPart::vapor_return);
      add("vent alone", vent);
    }
    if (vents || returns) {
      Variation shut = asked_;
      shut.all_blocked = true;
      shut.without.push_back(DeliveryPart::vapor_return);
      add("every vent blocked, no vapor return", shut);
    }
    if (setup.tanks.size() < 2) return;
    Variation other = asked_;
    other.at_once = setup.everything.at_once > 1 ? 1 : 2;
    add(other.at_once == 2 ? "two drops at once" : "one drop at a time", other);
  }

  /// Each uncertain value at its two ends, the others at their likely figures.
  void tell_spans() {
    const std::vector<site::UncertainValue> values = site::uncertain_values(site_);
    const double time = out_.runs.front().time, pressure = highest_pressure(out_.runs.front());
    for (std::size_t i = 0; i < values.size(); ++i) {
      if (!can_move_delivery(values[i])) continue;
      std::vector<site::End> ends(values.size(), site::End::likely);
      const auto low = run_at(ends, i, site::End::low), high = run_at(ends, i, site::End::high);
      if (!low || !high) continue;
      if (low->time == high->time && highest_pressure(*low) == highest_pressure(*high)) continue;
      const site::UncertainValue& v = values[i];
      out_.spans.push_back(
          {v.path, v.quantity, v.low, v.high, low->time, high->time, highest_pressure(*low), highest_pressure(*high)});
      for (const DeliveryRun* run : {&*low, &*high}) {
        widen(out_.time_range, run->time);
        widen(out_.pressure_range, highest_pressure(*run));
      }
    }
    if (!out_.time_range) return;
    widen(out_.time_range, time);
    widen(out_.pressure_range, pressure);
  }

  [[nodiscard]] std::optional<DeliveryRun> run_at(std::vector<site::End> ends, std::size_t i, site::End end) const {
    ends[i] = end;
    const site::Site moved = site::at_ends(site_, ends);
    const Setup setup = delivering::set_up(moved, options_, asked_);
    if (!setup.problem.empty()) return std::nullopt;
    return delivering::tell_run(setup, false, context_);
  }

  const site::Site& site_;
  const DeliveryOptions& options_;
  const Context& context_;
  Variation asked_;
  DeliveryResult out_;
};

template <class Part>
bool has(const std::vector<Part>& parts, const std::string& id) {
  return std::any_of(parts.begin(), parts.end(), [&](const Part& part) { return part.id.text == id; });
}

Diagnostic unknown(const char* what, const std::string& id) {
  return {Severity::error,
          std::string("there is no ") + what + " '" + id + "'",
          std::nullopt,
          std::string("name a ") + what + " of the site file",
          {}};
}

bool is_vent(const site::Site& site, const std::string& id) {
  for (const site::Tank& tank : site.tanks) {
    for (const site::Vent& vent : tank.vents) {
      if (vent.id.text == id || vent.shared.text == id) return true;
    }
  }
  return false;
}

}  // namespace

DeliveryResult study_delivery(const site::Site& site, const DeliveryOptions& options, const Context& context) {
  return Study(site, options, context).study();
}

std::vector<Diagnostic> check_options(const site::Site& site, const DeliveryOptions& options) {
  std::vector<Diagnostic> out;
  if (!options.delivery.empty() && !has(site.deliveries, options.delivery))
    out.push_back(unknown("delivery", options.delivery));
  if (!options.tank.empty() && !has(site.tanks, options.tank)) out.push_back(unknown("tank", options.tank));
  for (const std::string& id : options.blocked) {
    if (!has(site.tanks, id) && !is_vent(site, id)) out.push_back(unknown("vent", id));
  }
  return out;
}

}  // namespace forecourse::studies
