#include "forecourse/parts/tank/tank_volume.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "forecourse/parts/tank/box_body.h"
#include "forecourse/parts/tank/level_round.h"
#include "forecourse/parts/tank/level_table.h"
#include "forecourse/parts/tank/round_body.h"

namespace forecourse::parts {
namespace {

constexpr double table_close = 1e-12;  // of the capacity

/// A rising function's place where it reaches a value, by halving and false position in turn.
template <class Function>
double place_of(const Function& f, double value, double low, double high) {
  double below = f(low) - value, above = f(high) - value;
  for (int round = 0; round < 200 && high - low > 1e-15 * std::abs(high); ++round) {
    const double share = round % 2 == 0 && above > below ? std::clamp(-below / (above - below), 0.001, 0.999) : 0.5;
    const double middle = low + share * (high - low);
    if (!(middle > low && middle < high)) break;
    const double over = f(middle) - value;
    (over > 0.0 ? high : low) = middle;
    (over > 0.0 ? above : below) = over;
  }
  return 0.5 * (low + high);
}

/// A round tank: closed form where there is one, else a table of its integral.
struct Round {
  explicit Round(const RoundTank& tank, Ready ready) : body(tank), closed(LevelRound::of(tank)) {
    if (!closed && ready == Ready::table)
      table.emplace([this](double level) { return body.volume(level); }, body.kinks(), table_close * body.capacity());
  }
  [[nodiscard]] double full_level() const { return body.full_level(); }
  [[nodiscard]] double volume(double level) const {
    if (closed) return closed->volume(level);
    return table ? table->volume(level) : body.volume(level);
  }
  [[nodiscard]] double level(double volume) const {
    if (closed) return closed->level(volume);
    if (table) return table->level(volume);
    return place_of([this](double h) { return body.volume(h); }, volume, 0.0, full_level());
  }
  [[nodiscard]] double exact(double level) const { return body.volume(level); }
  [[nodiscard]] double surface(double level) const {
    return closed ? closed->surface_area(level) : body.surface_area(level);
  }
  [[nodiscard]] std::optional<double> wetted(double level) const { return body.wetted_area(level); }
  [[nodiscard]] double depth_at(const DipPlace& p, double level) const {
    if (steep()) return body.axis_at(level) - body.begin();
    return body.radius(p.along) + body.surface_above_axis(p.along, level) / std::cos(p.roll);
  }
  [[nodiscard]] double level_at(const DipPlace& p, double depth) const {
    if (steep()) return body.level_at(body.begin() + depth, 0.0);
    return body.level_at(p.along, (depth - body.radius(p.along)) * std::cos(p.roll));
  }
  [[nodiscard]] double stick(const DipPlace& p) const {
    return steep() ? body.end() - body.begin() : 2.0 * body.radius(p.along);
  }
  [[nodiscard]] bool steep() const { return body.steep(); }

  RoundBody body;
  std::optional<LevelRound> closed;
  std::optional<LevelTable> table;
};

struct Box {
  explicit Box(const BoxTank& tank) : body(tank) {}
  [[nodiscard]] double full_level() const { return body.full_level(); }
  [[nodiscard]] double volume(double level) const { return body.volume(level); }
  [[nodiscard]] double level(double volume) const {
    return place_of([this](double h) { return body.volume(h); }, volume, 0.0, full_level());
  }
  [[nodiscard]] double exact(double level) const { return body.volume(level); }
  [[nodiscard]] double surface(double level) const { return body.surface_area(level); }
  [[nodiscard]] std::optional<double> wetted(double level) const { return body.wetted_area(level); }
  [[nodiscard]] double depth_at(const DipPlace& p, double level) const { return body.depth_at(p.along, level); }
  [[nodiscard]] double level_at(const DipPlace& p, double depth) const { return body.level_at(p.along, depth); }
  [[nodiscard]] double stick(const DipPlace&) const { return body.tank().height; }

  BoxBody body;
};

struct Chart {
  explicit Chart(const DipChart& given) : points(given.points) {}
  using Line = std::vector<DipPoint>::const_iterator;
  /// The line at or above a depth, but the first.
  [[nodiscard]] Line above(double depth) const {
    const auto found = std::lower_bound(points.begin(), points.end(), depth,
                                        [](const DipPoint& p, double value) { return p.depth < value; });
    return std::clamp(found, points.begin() + 1, points.end() - 1);
  }
  [[nodiscard]] static double steepness(Line line) {
    return (line->volume - (line - 1)->volume) / (line->depth - (line - 1)->depth);
  }
  [[nodiscard]] double full_level() const { return points.back().depth; }
  [[nodiscard]] double volume(double depth) const {
    if (depth < points.front().depth) return 0.0;
    const auto line = above(depth);
    return (line - 1)->volume + steepness(line) * (depth - (line - 1)->depth);
  }
  [[nodiscard]] double level(double volume) const {
    if (volume <= points.front().volume) return points.front().depth;
    const auto found = std::lower_bound(points.begin(), points.end(), volume,
                                        [](const DipPoint& p, double value) { return p.volume < value; });
    const auto line = std::clamp(found, points.begin() + 1, points.end() - 1);
    return (line - 1)->depth + (volume - (line - 1)->volume) / steepness(line);
  }
  [[nodiscard]] double exact(double depth) const { return volume(std::clamp(depth, 0.0, full_level())); }
  [[nodiscard]] double surface(double depth) const {
    return depth < points.front().depth || depth > full_level() ? 0.0 : steepness(above(depth));
  }
  [[nodiscard]] static std::optional<double> wetted(double) { return std::nullopt; }
  [[nodiscard]] static double depth_at(const DipPlace&, double level) { return level; }
  [[nodiscard]] static double level_at(const DipPlace&, double depth) { return depth; }
  [[nodiscard]] double stick(const DipPlace&) const { return full_level(); }

  std::vector<DipPoint> points;
};

using Body = std::variant<Round, Box, Chart>;

Body body_of(const TankShape& shape, Ready ready) {
  if (const auto* round = std::get_if<RoundTank>(&shape)) return Body(std::in_place_type<Round>, *round, ready);
  if (const auto* box = std::get_if<BoxTank>(&shape)) return Body(std::in_place_type<Box>, *box);
  return Body(std::in_place_type<Chart>, std::get<DipChart>(shape));
}

struct Problem {
  using Words = std::optional<std::string>;
  Words operator()(const RoundTank& tank) const {
    if (!(tank.diameter > 0.0)) return "the diameter is not above 0";
    if (tank.length < 0.0) return "the length is below 0";
    if (tank.incline < 0.0 || tank.incline > 0.5 * std::numbers::pi) return "the incline is not from level to upright";
    for (const Head& head : {tank.low, tank.high}) {
      auto sizes = head_sizes(head, tank.diameter);
      if (auto* why = std::get_if<std::string>(&sizes)) return std::move(*why);
      if (tank.length == 0.0 && head.kind == HeadKind::flat) return "there is no room between the heads";
    }
    return std::nullopt;
  }
  Words operator()(const BoxTank& tank) const {
    if (!(tank.length > 0.0 && tank.width > 0.0 && tank.height > 0.0)) return "a size is not above 0";
    if (tank.pitch < 0.0 || tank.pitch >= 0.5 * std::numbers::pi) return "the pitch is not from level to below upright";
    if (std::abs(tank.roll) > 0.5 * std::numbers::pi) return "the roll is more than a right angle";
    return std::nullopt;
  }
  Words operator()(const DipChart& chart) const {
    if (chart.points.size() < 2) return "a dip chart has two lines at least";
    for (std::size_t i = 1; i < chart.points.size(); ++i) {
      if (!(chart.points[i].depth > chart.points[i - 1].depth && chart.points[i].volume > chart.points[i - 1].volume))
        return "the lines of the dip chart do not rise";
    }
    return std::nullopt;
  }
};

}  // namespace

struct TankVolume::Inside {
  Inside(TankShape given, std::vector<Displacement> all, Ready ready)
      : shape(std::move(given)), fittings(std::move(all)), body(body_of(shape, ready)) {
    std::visit([this](const auto& b) { full = b.full_level(); }, body);
    capacity = volume(full);
  }
  [[nodiscard]] double displaced(double level) const {
    double sum = 0.0;
    for (const Displacement& d : fittings) sum += d.volume * std::clamp((level - d.from) / (d.to - d.from), 0.0, 1.0);
    return sum;
  }
  [[nodiscard]] double displaced_area(double level) const {
    double sum = 0.0;
    for (const Displacement& d : fittings) sum += level > d.from && level < d.to ? d.volume / (d.to - d.from) : 0.0;
    return sum;
  }
  [[nodiscard]] double volume(double level) const {
    const double h = std::clamp(level, 0.0, full);
    return std::visit([&](const auto& b) { return b.volume(h); }, body) - displaced(h);
  }

  TankShape shape;
  std::vector<Displacement> fittings;
  Body body;
  double full = 0.0;
  double capacity = 0.0;
};

std::optional<std::string> tank_problem(const TankShape& shape, const std::vector<Displacement>& fittings) {
  if (auto why = std::visit(Problem{}, shape)) return why;
  for (const Displacement& d : fittings) {
    if (!(d.to > d.from) || d.from < 0.0 || d.volume < 0.0) return "what stands inside has no height or no volume";
  }
  if (fittings.empty()) return std::nullopt;
  const TankVolume tank(shape, fittings, Ready::none);
  for (const Displacement& d : fittings) {
    if (d.to > tank.full_level() * (1.0 + 1e-9)) return "what stands inside is taller than the tank";
    for (int i = 1; i < 20; ++i) {
      if (tank.surface_area(d.from + (d.to - d.from) * i / 20.0) <= 0.0)
        return "what stands inside takes more room than there is at its level";
    }
  }
  return std::nullopt;
}

TankVolume::TankVolume(TankShape shape, std::vector<Displacement> fittings, Ready ready)
    : inside_(std::make_shared<const Inside>(std::move(shape), std::move(fittings), ready)) {}

double TankVolume::capacity() const { return inside_->capacity; }

double TankVolume::full_level() const { return inside_->full; }

double TankVolume::volume(double level) const { return inside_->volume(level); }

double TankVolume::level(double volume) const {
  if (volume <= 0.0) return 0.0;
  if (volume >= inside_->capacity) return inside_->full;
  if (!inside_->fittings.empty())
    return place_of([this](double h) { return inside_->volume(h); }, volume, 0.0, inside_->full);
  return std::visit([&](const auto& b) { return b.level(volume); }, inside_->body);
}

double TankVolume::surface_area(double level) const {
  return std::visit([&](const auto& b) { return b.surface(level); }, inside_->body) - inside_->displaced_area(level);
}

std::optional<double> TankVolume::wetted_area(double level) const {
  const double h = std::clamp(level, 0.0, inside_->full);
  return std::visit([&](const auto& b) { return b.wetted(h); }, inside_->body);
}

double TankVolume::depth_at(const DipPlace& place, double level) const {
  return std::visit([&](const auto& b) { return std::clamp(b.depth_at(place, level), 0.0, b.stick(place)); },
                    inside_->body);
}

double TankVolume::level_at(const DipPlace& place, double depth) const {
  return std::visit([&](const auto& b) { return b.level_at(place, depth); }, inside_->body);
}

StickRange TankVolume::range_of(const DipPlace& place) const {
  return std::visit(
      [&](const auto& b) {
        return StickRange{b.level_at(place, 0.0), b.level_at(place, b.stick(place))};
      },
      inside_->body);
}

double TankVolume::exact_volume(double level) const {
  const double h = std::clamp(level, 0.0, inside_->full);
  return std::visit([&](const auto& b) { return b.exact(h); }, inside_->body) - inside_->displaced(h);
}

const TankShape& TankVolume::shape() const { return inside_->shape; }

const std::vector<Displacement>& TankVolume::fittings() const { return inside_->fittings; }

}  // namespace forecourse::parts
