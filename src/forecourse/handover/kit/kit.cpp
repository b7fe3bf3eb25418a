#include "forecourse/handover/kit/kit.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/figure.h"
#include "forecourse/handover/kit/needs.h"
#include "forecourse/handover/kit/part_words.h"
#include "forecourse/handover/kit/spares.h"
#include "forecourse/handover/parts/rules_of_station.h"
#include "forecourse/site/drawn_length.h"
#include "forecourse/site/rules/read_rule_set.h"

namespace forecourse::handover {
namespace {

/// Share of pipe that is ordered on top of what is laid.
/// \source common practice, no source
constexpr double usual_waste = 0.05;

// ---- standards --------------------------------------------------------------------------------------

/// The standards that a figure's words end with: "UL 58, UL 1316 or UL 1746".
std::string standards_in(std::string_view words) {
  constexpr std::string_view to = "ed to ";
  const std::size_t at = words.rfind(to);
  return at == std::string_view::npos ? std::string() : std::string(words.substr(at + to.size()));
}

/// The requirement of the built-in rule sets that asks for a listing.
std::optional<KitStandard> standard_of(std::string_view figure_id) {
  const checks::Figure* figure = figure_id.empty() ? nullptr : checks::find_figure(figure_id);
  if (figure == nullptr) return std::nullopt;
  for (const site::RuleSet& set : site::built_in_rule_sets()) {
    for (const site::Requirement& one : set.requirements) {
      if (one.figure.text != figure_id) continue;
      return KitStandard{standards_in(figure->words), one.clause.text,
                         one.edition.empty() ? set.edition.text : one.edition.text,
                         one.seen ? one.seen->value : site::ClauseSeen::memory};
    }
  }
  return std::nullopt;
}

/// UL standards, unless the station lives under European rules alone; EN standards where it lives under those.
std::vector<KitStandard> standards_for(const StationPart& part, const PartKind& kind, const site::Site& site) {
  std::vector<KitStandard> out;
  const auto add = [&](std::string_view figure) {
    if (auto one = standard_of(figure)) out.push_back(std::move(*one));
  };
  const site::Pipe* pipe = pipe_of(part);
  const bool metal_pipe = kind.is_pipe && pipe != nullptr && is_metal(*pipe).value_or(false);
  if (!under_european_rules_alone(site) && !metal_pipe) add(kind.listed_ul);
  if (under_european_rules(site)) add(kind.listed_en);
  return out;
}

// ---- compatibility ----------------------------------------------------------------------------------

class Fits {
 public:
  explicit Fits(const site::Site& site) : site_(site) {
    const checks::Facts facts{site, {}};
    const checks::Figure* high = checks::find_figure("tank-high-blend");
    if (high == nullptr) return;
    for (const checks::FigureAt& tank : high->read(facts)) high_[tank.subject] = tank.fact.value_or(false);
  }

  [[nodiscard]] Compatibility of(const StationPart& part) const {
    Compatibility out;
    for (const std::string& product : part.products) add(product, out);
    if (out.kinds.empty()) return out;
    if (const auto* valve = std::get_if<const site::ShearValve*>(&part.data); valve != nullptr && (*valve)->listed)
      set(*(*valve)->listed, out);
    return out;
  }

 private:
  static void set(bool shown, Compatibility& out) {
    out.fit = shown ? Fit::shown : Fit::not_fit;
    out.missing.clear();
  }

  void add(const std::string& product, Compatibility& out) const {
    for (const site::Product& one : site_.products) {
      if (one.id.text != product) continue;
      const std::string kind = one.kind.empty() ? product : one.kind.text;
      if (std::find(out.kinds.begin(), out.kinds.end(), kind) == out.kinds.end()) out.kinds.push_back(kind);
    }
    for (const site::Tank& tank : site_.tanks) {
      if (holds(tank, product)) add(tank, out);
    }
  }

  static bool holds(const site::Tank& tank, const std::string& product) {
    return tank.product.text == product ||
           std::any_of(tank.compartments.begin(), tank.compartments.end(),
                       [&](const site::Compartment& one) { return one.product.text == product; });
  }

  /// One that does not fit decides, then one of which nothing is known.
  void add(const site::Tank& tank, Compatibility& out) const {
    const auto high = high_.find(tank.id.text);
    out.high_blend = out.high_blend || (high != high_.end() && high->second);
    if (tank.compatible && !*tank.compatible) return set(false, out);
    if (out.fit == Fit::not_fit) return;
    if (tank.compatible) {
      if (out.fit == Fit::does_not_apply) out.fit = Fit::shown;
      return;
    }
    out.fit = Fit::not_determined;
    if (out.missing.empty()) out.missing = "enter compatible of tank " + tank.id.text;
  }

  const site::Site& site_;
  std::map<std::string, bool> high_;  ///< by tank
};

// ---- lengths ----------------------------------------------------------------------------------------

/// The length of a line that is not entered, straight on the plan; empty: it is entered, or has none.
std::optional<DefaultUsed> drawn_length(const StationPart& part, const site::Site& site) {
  const auto* line = std::get_if<const site::Line*>(&part.data);
  return line == nullptr ? std::nullopt : site::drawn_length(site, **line);
}

/// The length of a run of pipe; empty: neither entered nor computed.
site::Maybe<Length> run_length(const StationPart& part, const site::Site& site) {
  const site::Pipe* pipe = pipe_of(part);
  if (pipe != nullptr && pipe->length) return pipe->length;
  const auto drawn = drawn_length(part, site);
  if (!drawn) return std::nullopt;
  const Length length = Length::from_si(drawn->value);
  return site::Entered<Length>{length, length, length, part.where};
}

// ---- rows -------------------------------------------------------------------------------------------

/// Why a part is not ordered for itself; empty: it is.
std::string not_ordered(const StationPart& part) {
  if (part.of_tanker) return "comes with the tanker";
  if (part.kind == "meter" || part.kind == "control-valve") return "comes with the dispenser";
  if (is_set_in_parts(part)) return "its parts are listed one by one";
  return {};
}

/// What makes parts equal.
bool is_same(const KitRow& a, const KitRow& b) {
  return std::tie(a.stop, a.kind, a.what, a.sizes, a.rating, a.listed_to, a.not_ordered) ==
             std::tie(b.stop, b.kind, b.what, b.sizes, b.rating, b.listed_to, b.not_ordered) &&
         a.compatibility.kinds == b.compatibility.kinds && a.count.has_value() == b.count.has_value();
}

/// The row with what another of the same parts needs more.
void join(KitRow& row, const KitRow& more) {
  if (row.count) *row.count += more.count.value_or(0);
  if (row.is_pipe && more.length) row.length = row.length.value_or(0.0) + *more.length;
  row.runs_without_length += more.runs_without_length;
  const auto widen = [](std::optional<double>& most, const std::optional<double>& one) {
    if (one) most = std::max(most.value_or(*one), *one);
  };
  widen(row.needed.pressure_gauge, more.needed.pressure_gauge);
  widen(row.needed.vacuum, more.needed.vacuum);
  if (row.needed.missing.empty()) row.needed.missing = more.needed.missing;
  Compatibility& fit = row.compatibility;
  if (more.compatibility.fit == Fit::not_fit || (fit.fit == Fit::shown && more.compatibility.fit != Fit::shown))
    fit = more.compatibility;
  row.parts.insert(row.parts.end(), more.parts.begin(), more.parts.end());
  for (const std::string& one : more.subjects) {
    if (std::find(row.subjects.begin(), row.subjects.end(), one) == row.subjects.end()) row.subjects.push_back(one);
  }
}

class Rows {
 public:
  Rows(const site::Site& site, const studies::FlowResult* flow) : site_(site), needs_(site, flow), fits_(site) {}

  [[nodiscard]] std::vector<KitRow> of(const std::vector<StationPart>& parts) const {
    std::vector<KitRow> out;
    for (const StationPart& part : parts) {
      KitRow one = row_of(part);
      const auto found = std::find_if(out.begin(), out.end(), [&](const KitRow& row) { return is_same(row, one); });
      if (found == out.end()) {
        out.push_back(std::move(one));
      } else {
        join(*found, one);
      }
    }
    for (KitRow& row : out) {
      // Of parts of which one is not determined none is: the greatest could be that one's.
      if (!row.needed.missing.empty()) row.needed.pressure_gauge.reset();
      row.below_need = row.rating && row.needed.pressure_gauge && *row.rating < *row.needed.pressure_gauge;
    }
    return out;
  }

 private:
  [[nodiscard]] KitRow row_of(const StationPart& part) const {
    static constexpr PartKind unknown{"", "part", ""};
    const PartKind* known = find_part_kind(part.kind);
    const PartKind& kind = known == nullptr ? unknown : *known;
    PartWords words = words_of(part, kind);
    KitRow out;
    out.stop = part.stop;
    out.kind = part.kind;
    out.what = std::move(words.what);
    out.sizes = std::move(words.sizes);
    out.function = kind.function;
    out.needed = needs_.of(part, kind.bears);
    out.rating = words.rating;
    out.standards = standards_for(part, kind, site_);
    out.listed_to = std::move(words.listed_to);
    if (is_wetted(kind)) out.compatibility = fits_.of(part);
    out.count = part.count;
    out.is_pipe = kind.is_pipe || (part.kind == "siphon-bar" && pipe_of(part) != nullptr);
    if (out.is_pipe) out.length = words.length;
    if (const auto drawn = drawn_length(part, site_)) out.length = drawn->value;
    if (out.is_pipe && !out.length) out.runs_without_length = 1;
    out.not_ordered = not_ordered(part);
    out.parts = {part.path};
    out.subjects = {part.subject};
    return out;
  }

  const site::Site& site_;
  Needs needs_;
  Fits fits_;
};

// ---- totals -----------------------------------------------------------------------------------------

/// Pipe is ordered by what it is made of and its size, wherever it is laid.
std::vector<PipeTotal> pipes_of(const std::vector<StationPart>& parts, const std::vector<KitRow>& rows,
                                const KitOptions& options, const site::Site& site) {
  std::map<std::string, const StationPart*> by_path;
  for (const StationPart& part : parts) by_path.emplace(part.path, &part);
  std::vector<PipeTotal> out;
  for (const KitRow& row : rows) {
    if (!row.is_pipe || !row.not_ordered.empty()) continue;
    for (const std::string& path : row.parts) {
      const StationPart& part = *by_path.at(path);
      PipeTotal one;
      one.what = pipe_to_order(part);
      one.sizes = row.sizes;
      auto found = std::find_if(out.begin(), out.end(), [&](const PipeTotal& total) {
        return total.what == one.what && total.sizes == one.sizes;
      });
      if (found == out.end()) found = out.insert(out.end(), one);
      ++found->runs;
      if (const auto length = run_length(part, site)) {
        found->length += length->likely.si();
        found->length_low += length->low.si();
        found->length_high += length->high.si();
      } else {
        ++found->runs_without_length;
      }
    }
  }
  for (PipeTotal& total : out) {
    total.order_length = total.length * (1.0 + options.waste.value_or(usual_waste));
    if (!options.stick_length || total.runs_without_length > 0) continue;
    constexpr double rounding = 1e-9;  // so that 60 ft in sticks of 20 ft are three
    total.sticks = static_cast<int>(std::ceil(total.order_length / *options.stick_length - rounding));
  }
  return out;
}

std::vector<OrderLine> order_of(const std::vector<KitRow>& rows) {
  std::vector<OrderLine> out;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const KitRow& row = rows[i];
    if (row.is_pipe || !row.not_ordered.empty()) continue;
    auto found = std::find_if(out.begin(), out.end(), [&](const OrderLine& line) {
      return line.what == row.what && line.sizes == row.sizes && line.count.has_value() == row.count.has_value();
    });
    if (found == out.end()) {
      out.push_back({row.what, row.sizes, row.count, {i}});
      continue;
    }
    if (found->count) *found->count += *row.count;
    found->rows.push_back(i);
  }
  return out;
}

// ---- what is not told -------------------------------------------------------------------------------

/// Runs of pipe are entered without a size, and so are parts that are screwed to it.
bool lacks_size(const KitRow& row) {
  return row.not_ordered.empty() && row.sizes.empty() && (row.is_pipe || row.needed.bears != Bears::nothing);
}

std::string noun_of(const std::string& kind) {
  const PartKind* known = find_part_kind(kind);
  return known == nullptr ? kind : std::string(known->noun);
}

std::vector<std::string> not_told(const std::vector<KitRow>& rows, const std::vector<PipeTotal>& pipes) {
  std::vector<std::string> out;
  std::map<std::string, std::size_t> uncounted;
  std::map<std::string, std::size_t> unsized;
  for (const KitRow& row : rows) {
    if (lacks_size(row)) unsized[row.kind] += row.parts.size();
    if (!row.count && row.not_ordered.empty()) uncounted[row.kind] += row.parts.size();
    if (row.below_need) out.push_back(row.what + ": the rating entered is less than the pressure it can see");
  }
  for (const auto& [kind, places] : uncounted) {
    out.push_back(
        fmt::format("how many of: {} (at {} place{} of the file)", noun_of(kind), places, places == 1 ? "" : "s"));
  }
  for (const auto& [kind, places] : unsized) {
    out.push_back(
        fmt::format("size of: {} (at {} place{} of the file)", noun_of(kind), places, places == 1 ? "" : "s"));
  }
  for (const PipeTotal& pipe : pipes) {
    if (pipe.runs_without_length > 0)
      out.push_back(fmt::format("length of {} of {} runs: {}", pipe.runs_without_length, pipe.runs, pipe.what));
  }
  out.push_back("threads: a site file has no key for them");
  return out;
}

}  // namespace

const char* word(Fit fit) {
  switch (fit) {
    case Fit::shown:
      return "shown";
    case Fit::not_fit:
      return "not compatible";
    case Fit::not_determined:
      return "not determined";
    case Fit::does_not_apply:
      break;
  }
  return "does not apply";
}

Kit make_kit(const site::Site& site, const KitOptions& options, const studies::FlowResult* flow) {
  Kit out;
  out.options = options;
  if (!options.waste) {
    out.options.waste = usual_waste;
    out.defaults.push_back({"waste allowance of pipe",
                            usual_waste,
                            "",
                            DefaultStatus::common_practice,
                            "common practice, no source",
                            {},
                            false});
  }
  const std::vector<StationPart> parts = parts_of_station(site);
  out.rows = Rows(site, flow).of(parts);
  out.pipes = pipes_of(parts, out.rows, out.options, site);
  for (const StationPart& part : parts) {
    if (const auto drawn = drawn_length(part, site)) out.defaults.push_back(*drawn);
  }
  out.order = order_of(out.rows);
  out.spares = spares_of(site, parts, out.rows);
  out.not_told = not_told(out.rows, out.pipes);
  if (flow != nullptr) out.warnings = flow->warnings;
  return out;
}

}  // namespace forecourse::handover
