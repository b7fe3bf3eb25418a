#include "forecourse/studies/flotation/buried_tank.h"

#include <algorithm>
#include <numbers>
#include <utility>

#include "forecourse/base/constants.h"
#include "forecourse/network/fluid.h"

namespace forecourse::studies {
namespace {

using parts::Layer;

template <class Q>
std::optional<double> si(const site::Maybe<Q>& entered) {
  return entered ? std::optional(entered->likely.si()) : std::nullopt;
}

double count_of(const site::Maybe<double>& count) { return count ? count->likely : 1.0; }

/// Whether all that the balance cannot do without is there; what is not is told in `problems`.
bool has_all(const site::Tank& tank, const std::optional<Shells>& shells, std::vector<std::string>& problems) {
  if (tank.above_ground && *tank.above_ground) {
    problems.emplace_back("it stands above ground: ground water does not lift it");
  }
  if (!shells) {
    problems.emplace_back(
        "its outside is not known: enter shape with kind = \"horizontal-cylinder\", outside_diameter, length, and "
        "heads that fit it");
  }
  if (!tank.flotation->empty_mass) {
    problems.emplace_back("the mass of the empty tank is not known: enter flotation.empty_mass");
  }
  if (!tank.flotation->cover) {
    problems.emplace_back("how deep it lies is not known: enter flotation.cover, from grade to the crown");
  }
  return problems.empty();
}

/// Reads what is entered under `flotation` of one tank.
class Reader {
 public:
  /// \pre mass and cover are entered
  Reader(const site::Site& site, const site::Tank& tank, BuriedTank start, TankFlotation& out,
         std::vector<DefaultUsed>& defaults)
      : site_(site), tank_(tank), entered_(*tank.flotation), told_(out), defaults_(defaults), out_(std::move(start)) {}

  BuriedTank read() {
    out_.crown = *si(entered_.cover);
    read_weights();
    read_backfill();
    read_sumps();
    read_slab();
    read_prism();
    read_deadmen();
    read_straps();
    return std::move(out_);
  }

 private:
  void leave_out(std::string what) { told_.left_out.push_back(std::move(what)); }
  void assume(std::string what) { told_.assumed.push_back(std::move(what)); }

  void read_weights() {
    out_.weight = (*si(entered_.empty_mass) + si(entered_.fittings_mass).value_or(0.0)) * standard_gravity;
    out_.water = si(entered_.water).value_or(water_density_at_60_fahrenheit * standard_gravity);
    if (!entered_.water) {
      defaults_.push_back({"unit weight of the ground water at tank " + tank_.id.text,
                           out_.water,
                           "N/m3",
                           DefaultStatus::published,
                           "fresh water at 60 degF [api_11_1_2004, 11.1.6]; salt or silt "
                           "makes it heavier",
                           {},
                           false});
    }
    if (entered_.ballast) told_.contents_density = si(entered_.ballast);
    if (!told_.contents_density) told_.contents_density = product_density();
    out_.contents = told_.contents_density.value_or(0.0) * standard_gravity;
  }

  /// Density of what the tank holds, as far as it is known [kg/m3].
  std::optional<double> product_density() {
    std::vector<DefaultUsed> used;
    std::vector<Diagnostic> problems;
    const auto fluid = network::flowing_fluid(site_, tank_.product.text, used, problems);
    if (!fluid) {
      leave_out("what is in it: its density is not known; enter flotation.ballast, or the density of the product");
      return std::nullopt;
    }
    for (DefaultUsed& one : used) {
      if (one.unit != "kg/m3") continue;
      one.moves_flow = false;
      defaults_.push_back(std::move(one));
    }
    return fluid->density;
  }

  void read_backfill() {
    const auto moist = si(entered_.backfill), submerged = si(entered_.backfill_submerged);
    if (!moist && !submerged) {
      leave_out("the backfill: enter its unit weight as flotation.backfill");
      return;
    }
    if (moist && !submerged) {
      defaults_.push_back({"unit weight under water of the backfill at tank " + tank_.id.text,
                           *moist - out_.water,
                           "N/m3",
                           DefaultStatus::computed,
                           "that above water less that of water [flotation_permit_1999, page 6]",
                           {},
                           false});
    }
    if (!moist) assume("the backfill above the water weighs no more than under it: enter flotation.backfill");
    out_.backfill = Backfill{moist.value_or(submerged.value_or(0.0)), submerged.value_or(*moist - out_.water)};
  }

  void read_sumps() {
    if (entered_.sumps.empty() && tank_.sump) {
      leave_out("the tank sump: what it displaces is not known; enter it as [[tank.flotation.sump]]");
    }
    for (const site::BuriedSump& sump : entered_.sumps) {
      if (!sump.diameter) {
        leave_out("a sump: enter its outside diameter");
        continue;
      }
      const double depth = std::min(si(sump.depth).value_or(out_.crown), out_.crown);
      const double across = *si(sump.diameter);
      const double area = count_of(sump.count) * std::numbers::pi / 4.0 * across * across;
      const double mass = count_of(sump.count) * si(sump.mass).value_or(0.0);
      if (!sump.mass) assume("a sump weighs nothing: enter its mass");
      Block block{"sump", area, {0.0, depth}, 0.0};
      if (depth > 0.0) block.unit_weight = mass * standard_gravity / (area * depth);
      out_.sumps.push_back(block);
      draw("sump", 0.0, 0.5 * across, block.layer);
    }
  }

  void read_slab() {
    if (!entered_.slab) return;
    const site::Slab& slab = *entered_.slab;
    const auto sizes = slab_sizes(slab);
    if (!slab.thickness || !slab.density || !sizes) {
      leave_out("the slab: enter its thickness, density, and overhang or length and width");
      return;
    }
    const double top = si(slab.top_depth).value_or(0.0);
    const Layer layer{top, std::min(top + *si(slab.thickness), out_.crown)};
    if (layer.to < top + *si(slab.thickness)) assume("the slab ends at the crown of the tank");
    slab_ = {"slab", std::max(0.0, sizes->first * sizes->second - sump_area()), layer,
             *si(slab.density) * standard_gravity};
    slab_width_ = sizes->second;
    slab_length_ = sizes->first;
    out_.concrete.push_back(*slab_);
    if (out_.backfill && top > 0.0)
      out_.soil_blocks.push_back({"backfill over the slab", slab_->area, {0.0, top}, 0.0});
    draw("slab", 0.0, 0.5 * slab_width_, layer);
  }

  [[nodiscard]] std::optional<std::pair<double, double>> slab_sizes(const site::Slab& slab) const {
    if (slab.length && slab.width) return std::pair(*si(slab.length), *si(slab.width));
    if (!slab.overhang) return std::nullopt;
    const double both = 2.0 * *si(slab.overhang);
    const Shells& outside = out_.shells;
    return std::pair(outside.length + 2.0 * outside.head_depth + both, outside.diameter + both);
  }

  [[nodiscard]] double sump_area() const {
    double area = 0.0;
    for (const Block& sump : out_.sumps) area += sump.area;
    return area;
  }

  /// Soil is counted over the crown alone, or between planes that begin lower where it is said to count.
  void read_prism() {
    const Shells& outside = out_.shells;
    out_.beside_crown = entered_.soil_beside_crown.value_or(false);
    const double slope = si(entered_.rupture_slope).value_or(0.0);
    const bool from_bottom = entered_.rupture_from.text == "bottom";
    const double base = from_bottom ? out_.bottom() : out_.crown + 0.5 * outside.diameter;
    out_.prism = {outside.length, outside.diameter, out_.beside_crown ? slope : 0.0,
                  out_.beside_crown ? base : out_.crown};
    if (out_.backfill && !entered_.soil_beside_crown) {
      leave_out("the soil beside the crown: say whether it counts with flotation.soil_beside_crown");
    }
    if (!out_.beside_crown && entered_.rupture_slope) {
      leave_out("the soil outside upright planes: flotation.rupture_slope needs soil_beside_crown = true");
    }
    if (out_.beside_crown && from_bottom) {
      assume("soil below the tank's widest line is lifted too, from its bottom up");
    }
    for (const Block& sump : out_.sumps) out_.out_of_prism.push_back({sump.area, sump.layer.from, sump.layer.to});
    if (slab_) take_slab_out(slope);
    told_.section.prism_base = out_.prism.base;
    told_.section.prism_half_width = 0.5 * out_.prism.width;
    told_.section.prism_half_top = 0.5 * out_.prism.width + out_.prism.slope * out_.prism.base;
    told_.section.soil_counts = out_.backfill.has_value();
  }

  /// Between slanting planes the whole slab is taken out, as the source does; between upright ones what of it, with
  /// the soil over it that is counted apart, lies over the tank.
  void take_slab_out(double slope) {
    const bool whole = out_.beside_crown && slope > 0.0;
    const Shells& outside = out_.shells;
    const double over =
        std::max(0.0, std::min(slab_length_, outside.length) * std::min(slab_width_, outside.diameter) - sump_area());
    out_.out_of_prism.push_back({whole ? slab_->area : over, whole ? slab_->layer.from : 0.0, slab_->layer.to});
    if (whole && slab_->layer.from > 0.0) out_.soil_blocks.clear();
  }

  void read_deadmen() {
    double along = 0.5 * out_.shells.diameter;
    for (const site::Deadman& deadman : entered_.deadmen) {
      told_.has_deadmen = true;
      if (!deadman.length || !deadman.width || !deadman.height || !deadman.unit_weight) {
        leave_out("a deadman: enter its length, width, height and unit_weight");
        continue;
      }
      add_deadman(deadman, along);
    }
    if (told_.has_deadmen && out_.beside_crown && !out_.deadman_soil.empty()) {
      assume("the soil over the deadmen and that between the planes are taken for two: see that they do not overlap");
    }
  }

  void read_straps() {
    if (!entered_.strap || !entered_.strap->count || !entered_.strap->working_load) return;
    out_.strap_capacity = entered_.strap->count->likely * *si(entered_.strap->working_load);
  }

  void add_deadman(const site::Deadman& deadman, double along) {
    const double count = count_of(deadman.count), width = *si(deadman.width), height = *si(deadman.height);
    const double area = count * *si(deadman.length) * width;
    const double base = si(deadman.base_depth).value_or(out_.bottom());
    if (!deadman.base_depth) {
      assume("the deadmen lie as deep as the tank's underside: enter base_depth");
    }
    const Layer layer{std::max(0.0, base - height), base};
    out_.deadmen.push_back({"deadmen", area, layer, *si(deadman.unit_weight)});
    draw("deadman", -(along + 0.5 * width), 0.5 * width, layer);
    if (count > 1.0) draw("deadman", along + 0.5 * width, 0.5 * width, layer);
    if (!deadman.soil_prism || !*deadman.soil_prism) {
      if (!deadman.soil_prism) leave_out("the soil over the deadmen: say whether it counts with soil_prism");
      return;
    }
    double top = si(deadman.prism_top).value_or(0.0);
    if (slab_ && top < slab_->layer.to) {
      top = slab_->layer.to;
      assume("the soil over the deadmen counts up to the underside of the slab only");
    }
    if (out_.backfill && top < layer.from)
      out_.deadman_soil.push_back({"soil over the deadmen", area, {top, layer.from}, 0.0});
  }

  void draw(const char* name, double middle, double half, Layer layer) {
    told_.section.pieces.push_back({name, middle - half, middle + half, layer.from, layer.to});
  }

  const site::Site& site_;
  const site::Tank& tank_;
  const site::Flotation& entered_;
  TankFlotation& told_;
  std::vector<DefaultUsed>& defaults_;
  BuriedTank out_;
  std::optional<Block> slab_;
  double slab_width_ = 0.0;
  double slab_length_ = 0.0;
};

}  // namespace

std::optional<BuriedTank> buried_tank(const site::Site& site, const site::Tank& tank, TankFlotation& out,
                                      std::vector<DefaultUsed>& defaults) {
  const std::optional<Shells> shells = shells_of(tank);
  if (!has_all(tank, shells, out.problems)) return std::nullopt;
  return Reader(site, tank, BuriedTank{*shells}, out, defaults).read();
}

}  // namespace forecourse::studies
