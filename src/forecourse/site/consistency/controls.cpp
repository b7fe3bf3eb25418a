#include "forecourse/site/consistency/controls.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "forecourse/base/constants.h"
#include "forecourse/site/fields/rules.h"
#include "forecourse/site/liquid_level.h"

namespace forecourse::site {

namespace {

/// The most that a pump adds at no flow and the speed of its curve [Pa]; empty if its curve does not say.
std::optional<double> highest_shutoff(const Pump& pump) {
  if (!pump.curve) return std::nullopt;
  if (pump.curve->shutoff) return pump.curve->shutoff->high.si();
  if (!pump.curve->coefficients.empty()) return pump.curve->coefficients.front().high;
  const auto& points = pump.curve->points;
  if (points.empty() || points.front().flow.si() != 0.0) return std::nullopt;
  return points.front().rise.si();
}

/// A key of a control, with the one kind of control that looks at it.
struct ControlKey {
  std::string_view name;
  ControlKind kind;
  std::optional<SourceSpan> where;  ///< empty: not entered
};

template <class T>
std::optional<SourceSpan> place(const Maybe<T>& value) {
  return value ? std::optional(value->where) : std::nullopt;
}

std::array<ControlKey, 7> keys_of(const PumpControl& c) {
  return {{{"starts_below", ControlKind::lead_lag, place(c.starts_below)},
           {"stops_above", ControlKind::lead_lag, place(c.stops_above)},
           {"hoses_calling", ControlKind::lead_lag, place(c.hoses_calling)},
           {"alternates_after", ControlKind::alternating, place(c.alternates_after)},
           {"holds", ControlKind::variable_speed, place(c.holds)},
           {"least_speed", ControlKind::variable_speed, place(c.least_speed)},
           {"most_speed", ControlKind::variable_speed, place(c.most_speed)}}};
}

std::string_view word_of(ControlKind kind) {
  const auto found =
      std::find_if(control_words.begin(), control_words.end(), [&](const auto& word) { return word.value == kind; });
  return found->word;
}

class ControlCheck {
 public:
  ControlCheck(const Site& site, const Supply& supply, Findings& findings)
      : site_(site), supply_(supply), findings_(findings) {}

  void check(const PumpControl& control) {
    if (control.product.empty() || !is_known_product(control.product.text)) return;  // told of there
    check_listed(control);
    const std::vector<const Source*> pumps = pumps_of(control);
    for (const Source* source : pumps) claim(control, *source->pump);
    if (pumps.empty()) return tell_no_pump(control);
    if (!control.kind) return;
    check_unused(control);
    if (!is_whole(control)) return;
    switch (control.kind->value) {
      case ControlKind::lead_lag:
        return check_lead_and_lag(control, pumps);
      case ControlKind::variable_speed:
        return check_speed(control, pumps);
      case ControlKind::alternating:
        if (pumps.size() == 1) warn_alone(control, pumps.front()->pump->id.text);
        return;
      case ControlKind::off:
      case ControlKind::all:
        return;
    }
  }

 private:
  [[nodiscard]] bool is_known_product(const std::string& id) const {
    return std::any_of(site_.products.begin(), site_.products.end(), [&](const Product& p) { return p.id.text == id; });
  }

  [[nodiscard]] const Source* find(const std::string& pump) const {
    const auto& all = supply_.sources();
    const auto found = std::find_if(all.begin(), all.end(), [&](const Source& s) { return s.pump->id.text == pump; });
    return found == all.end() ? nullptr : &*found;
  }

  /// Whether every pump that it may be about is known, with its product.
  [[nodiscard]] bool is_whole(const PumpControl& control) const {
    const auto& all = supply_.sources();
    return std::all_of(control.pumps.begin(), control.pumps.end(), [&](const Name& n) { return find(n.text); }) &&
           std::none_of(all.begin(), all.end(), [](const Source& source) { return source.product.empty(); });
  }

  [[nodiscard]] std::vector<const Source*> pumps_of(const PumpControl& control) const {
    std::vector<const Source*> out;
    for (const Source& source : supply_.sources()) {
      const bool named = std::find(control.pumps.begin(), control.pumps.end(), source.pump->id) != control.pumps.end();
      if (named || (control.pumps.empty() && source.product == control.product.text)) out.push_back(&source);
    }
    return out;
  }

  void check_listed(const PumpControl& control) {
    for (std::size_t i = 0; i < control.pumps.size(); ++i) {
      const Name& name = control.pumps[i];
      const Source* source = find(name.text);
      if (source == nullptr || source->product.empty()) continue;
      if (std::find(control.pumps.begin(), control.pumps.begin() + static_cast<std::ptrdiff_t>(i), name) !=
          control.pumps.begin() + static_cast<std::ptrdiff_t>(i)) {
        findings_.error(name.where, fmt::format("control '{}' names pump '{}' twice", control.id.text, name.text),
                        "name each pump once, in the order they start");
      } else if (source->product != control.product.text) {
        Diagnostic& d = findings_.error(name.where,
                                        fmt::format("control '{}' runs the pumps of '{}', but pump '{}' draws '{}'",
                                                    control.id.text, control.product.text, name.text, source->product),
                                        "name a pump of that product");
        relate(d, source->pump->where, fmt::format("pump '{}'", name.text));
      }
    }
  }

  /// A pump has one control.
  void claim(const PumpControl& control, const Pump& pump) {
    const auto [found, fresh] = claimed_.emplace(pump.id.text, &control);
    if (fresh) return;
    const auto named = std::find(control.pumps.begin(), control.pumps.end(), pump.id);
    Diagnostic& d = findings_.error(
        named == control.pumps.end() ? control.where : named->where,
        fmt::format("pump '{}' has two controls: '{}' and '{}'", pump.id.text, found->second->id.text, control.id.text),
        "list in each control its own pumps: pumps = [...]");
    relate(d, found->second->where, fmt::format("control '{}'", found->second->id.text));
  }

  void tell_no_pump(const PumpControl& control) {
    if (!is_whole(control) || !control.pumps.empty()) return;
    findings_.error(
        control.product.where,
        fmt::format("control '{}' runs the pumps of '{}', but no pump draws it", control.id.text, control.product.text),
        "name a product that has a pump");
  }

  /// A key that the kind of control does not look at.
  void check_unused(const PumpControl& control) {
    std::string keys;
    std::optional<SourceSpan> first;
    std::string_view meant;
    for (const ControlKey& key : keys_of(control)) {
      if (!key.where || key.kind == control.kind->value) continue;
      keys += (first ? ", " : "") + std::string(key.name);
      if (first) continue;
      first = key.where;
      meant = word_of(key.kind);
    }
    if (!first) return;
    findings_.warn(*first,
                   fmt::format("control '{}' does not look at {}: its kind is \"{}\"", control.id.text, keys,
                               word_of(control.kind->value)),
                   fmt::format("write kind = \"{}\", or leave {} out", meant, keys));
  }

  void warn_alone(const PumpControl& control, const std::string& pump) {
    findings_.warn(control.kind->where,
                   fmt::format("control '{}' takes no turns: it has one pump only, '{}'", control.id.text, pump),
                   "add the other pump, or leave the control out");
  }

  // ---- lead and lag ----------------------------------------------------------------------------------

  void check_lead_and_lag(const PumpControl& control, const std::vector<const Source*>& pumps) {
    if (pumps.size() == 1) {
      findings_.error(control.kind->where,
                      fmt::format("control '{}' can never start another pump: it has one only, '{}'", control.id.text,
                                  pumps.front()->pump->id.text),
                      "add the other pump, or leave the control out");
    }
    const auto& below = control.starts_below;
    if (!below && !control.hoses_calling) {
      findings_.error(control.kind->where,
                      fmt::format("control '{}' can never start another pump: it does not say when", control.id.text),
                      "add starts_below = \"25 psi\", or hoses_calling = 4");
    } else if (below && control.hoses_calling) {
      findings_.error(control.hoses_calling->where,
                      fmt::format("control '{}' starts the next pump in two ways", control.id.text),
                      "keep starts_below or hoses_calling");
      return;
    }
    if (below && control.stops_above && below->likely >= control.stops_above->likely) {
      findings_.error(below->where, "starts_below is not below stops_above: the pump would never come to rest",
                      "exchange them, or leave a space between them");
    }
    if (below && below->high.si() <= 0.0 && all_outlets_above(*pumps.front()->pump, control.product.text)) {
      findings_.error(below->where,
                      fmt::format("control '{}' can never start another pump: every nozzle is above the pump's "
                                  "discharge, so the line pressure there stays above zero while fuel flows",
                                  control.id.text),
                      "enter a line pressure above that of the lift");
    }
    if (control.hoses_calling) check_hoses(control);
  }

  void check_hoses(const PumpControl& control) {
    const Entered<double>& calling = *control.hoses_calling;
    for (const double count : {calling.likely, calling.low, calling.high}) {
      if (count >= 1.0 && count == std::floor(count)) continue;
      findings_.error(calling.where,
                      fmt::format("hoses_calling must be a whole number, 1 or more, but {} is written", count),
                      fmt::format("write hoses_calling = {}", std::max(1.0, std::floor(count))));
      return;
    }
    const std::size_t hoses = hoses_of(control.product.text).size();
    if (control.hoses_calling->low < static_cast<double>(hoses)) return;
    findings_.error(control.hoses_calling->where,
                    fmt::format("control '{}' can never start another pump: it waits for more than {} hoses of '{}', "
                                "and there {} {}",
                                control.id.text, control.hoses_calling->likely, control.product.text,
                                hoses == 1 ? "is" : "are", hoses),
                    "lower hoses_calling");
  }

  [[nodiscard]] std::vector<const Hose*> hoses_of(const std::string& product) const {
    std::vector<const Hose*> out;
    for (const Dispenser& dispenser : site_.dispensers) {
      for (const Hose& hose : dispenser.hoses) {
        const std::vector<std::string> drawn = products_of(hose);
        if (std::find(drawn.begin(), drawn.end(), product) != drawn.end()) out.push_back(&hose);
      }
    }
    return out;
  }

  [[nodiscard]] bool all_outlets_above(const Pump& pump, const std::string& product) const {
    if (!pump.discharge_elevation) return false;
    const std::vector<const Hose*> hoses = hoses_of(product);
    return std::all_of(hoses.begin(), hoses.end(), [&](const Hose* hose) {
      return hose->outlet_elevation && hose->outlet_elevation->low >= pump.discharge_elevation->high;
    });
  }

  // ---- variable speed --------------------------------------------------------------------------------

  /// Above what every pump reaches at the most speed and no flow, with the heaviest fuel where the tank stands higher.
  void check_speed(const PumpControl& control, const std::vector<const Source*>& pumps) {
    if (!control.holds || !control.most_speed) return;
    const Pump& first = *pumps.front()->pump;
    if (!first.discharge_elevation) return;
    for (const Source* source : pumps) {
      const auto shutoff = highest_shutoff(*source->pump);
      const auto level = liquid_level(site_, source->pump->tank.text);
      if (!shutoff || !level) return;
      const double speed = control.most_speed->high.si() * (source->pump->speed ? source->pump->speed->high.si() : 1.0);
      const double above = std::max(0.0, *level - first.discharge_elevation->low.si());
      const double most = *shutoff * speed * speed + fuel_density.high * standard_gravity * above;
      if (control.holds->low.si() <= most) return;
    }
    findings_.error(control.holds->where,
                    fmt::format("control '{}' can never hold its pressure: no pump reaches it, even at no flow and at "
                                "most_speed",
                                control.id.text),
                    "lower holds, or raise most_speed");
  }

  const Site& site_;
  const Supply& supply_;
  Findings& findings_;
  std::map<std::string, const PumpControl*> claimed_;
};

}  // namespace

void check_controls(const Site& site, const Supply& supply, Findings& findings) {
  ControlCheck check(site, supply, findings);
  for (const PumpControl& control : site.controls) check.check(control);
}

}  // namespace forecourse::site
