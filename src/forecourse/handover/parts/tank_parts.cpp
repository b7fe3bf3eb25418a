#include <algorithm>
#include <cmath>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/handover/parts/part_list.h"
#include "forecourse/handover/parts/shared_outlet.h"

namespace forecourse::handover {
namespace {

/// What stands `count` times; one where no count is entered.
int counted(const site::Maybe<double>& count) { return count ? static_cast<int>(std::lround(count->likely)) : 1; }

class TankParts {
 public:
  TankParts(const site::Site& site, PartList& out) : site_(site), out_(out) {}

  void list(const site::Tank& tank) {
    const Place at{item("tank", site_.tanks, tank), tank.id.text, tank.id.text, products_of(tank)};
    out_.add(Stop::tank, "tank", at, "", tank.where, &tank);
    for (const site::Fill& fill : tank.fills) list(fill, tank, at);
    out_.add_if(Stop::fill, "overfill-alarm", at, "overfill_alarm", tank.overfill_alarm);
    if (tank.sump) out_.add_sump("tank-sump", at, *tank.sump);
    list_inside(tank, at);
    list_ground(tank, at);
    for (const site::Vent& vent : tank.vents) list(vent, tank, at);
    if (tank.vapor_return) list(*tank.vapor_return, at);
  }

 private:
  static void add_products(std::vector<std::string>& out, const site::Tank& tank) {
    add_product(out, tank.product.text);
    for (const site::Compartment& one : tank.compartments) add_product(out, one.product.text);
  }

  static std::vector<std::string> products_of(const site::Tank& tank) {
    std::vector<std::string> out;
    add_products(out, tank);
    return out;
  }

  /// Of all tanks that breathe through one outlet.
  static std::vector<std::string> products_of(const std::vector<TankVent>& vents) {
    std::vector<std::string> out;
    for (const TankVent& one : vents) add_products(out, *one.tank);
    return out;
  }

  void list(const site::Fill& fill, const site::Tank& tank, const Place& of_tank) {
    Place at = within(of_tank, item("fill", tank.fills, fill));
    at.subject = checks::name_of(tank, fill);
    out_.add(Stop::fill, "fill", at, "", fill.where, &fill);
    out_.add_pipe(Stop::fill, "fill-pipe", at, "pipe", fill.pipe);
    out_.add_if(Stop::fill, "drop-tube", at, "drop_tube", fill.drop_tube);
    out_.add_if(Stop::fill, "spill-container", at, "spill_container", fill.spill_container);
    out_.add_if(Stop::fill, "overfill-valve", at, "overfill_valve", fill.overfill_valve);
  }

  void list_watch(Stop stop, const Place& at, const std::optional<site::Interstice>& interstice) {
    if (!interstice || interstice->watch.empty() || interstice->watch.text == "none") return;
    out_.add(stop, "interstice-monitor", at, "interstice", interstice->where, &*interstice);
  }

  void list_inside(const site::Tank& tank, const Place& at) {
    const bool stick = tank.gauge && tank.gauge->kind.text == "stick";
    out_.add_if(Stop::tank, stick ? "gauge-stick" : "tank-gauge", at, "gauge", tank.gauge);
    list_watch(Stop::tank, at, tank.interstice);
    if (!tank.siphon || is_listed_before(tank)) return;
    const Place bar = within(at, "siphon");
    out_.add(Stop::tank, "siphon-bar", bar, "", tank.siphon->where, &*tank.siphon);
    if (tank.siphon->pipe) out_.add_fittings(Stop::tank, within(bar, "pipe"), *tank.siphon->pipe);
  }

  /// Whether the pipe to the tanks that this one is siphoned with was entered at each of them, earlier in the file.
  [[nodiscard]] bool is_listed_before(const site::Tank& tank) const {
    const auto is_listed = [&](const site::Name& with) {
      return std::any_of(site_.tanks.data(), &tank, [&](const site::Tank& other) {
        return other.siphon && other.id == with &&
               std::find(other.siphoned_with.begin(), other.siphoned_with.end(), tank.id) != other.siphoned_with.end();
      });
    };
    return !tank.siphoned_with.empty() && std::all_of(tank.siphoned_with.begin(), tank.siphoned_with.end(), is_listed);
  }

  void list_ground(const site::Tank& tank, const Place& at) {
    if (tank.flotation) list(*tank.flotation, tank, within(at, "flotation"));
    for (const site::Well& well : tank.wells) {
      Place one = within(at, item("well", tank.wells, well));
      one.subject = checks::name_in_tank(tank, tank.wells, well, "well");
      out_.add(Stop::tank, "observation-well", one, "", well.where, &well);
    }
    out_.add_if(Stop::tank, "ground-barrier", at, "barrier", tank.barrier);
    out_.add_if(Stop::tank, "cathodic-protection", at, "protection", tank.protection);
  }

  void list(const site::Flotation& flotation, const site::Tank& tank, const Place& at) {
    out_.add_if(Stop::tank, "slab", at, "slab", flotation.slab);
    // The tank sump, where it is entered for itself, is one of the sumps that weigh on the tank.
    int listed = tank.sump ? 1 : 0;
    for (const site::BuriedSump& sump : flotation.sumps) {
      const int more = std::max(counted(sump.count) - listed, 0);
      listed -= counted(sump.count) - more;
      const auto index = static_cast<std::size_t>(&sump - flotation.sumps.data());
      if (more > 0) out_.add(Stop::tank, "sump-on-tank", at, item("sump", "", index), sump.where, &sump).count = more;
    }
    for (const site::Deadman& one : flotation.deadmen) {
      const auto index = static_cast<std::size_t>(&one - flotation.deadmen.data());
      out_.add(Stop::tank, "deadman", at, item("deadman", "", index), one.where, &one).count = counted(one.count);
    }
    if (!flotation.strap) return;
    out_.add(Stop::tank, "strap", at, "strap", flotation.strap->where, &*flotation.strap).count =
        counted(flotation.strap->count);
  }

  void list(const site::Vent& vent, const site::Tank& tank, const Place& of_tank) {
    Place at = within(of_tank, item("vent", tank.vents, vent));
    at.subject = checks::name_in_tank(tank, tank.vents, vent, "vent");
    out_.add_pipe(Stop::vapor, "vent-branch", at, "branch", vent.branch);
    out_.add_fact(Stop::vapor, "vent-restrictor", at, "restrictor", vent.restrictor, vent.where, &vent);
    if (outlet_of(site_, vent).vent != &vent) return;
    at.products = products_of(vents_sharing(site_, vent));
    out_.add(Stop::vapor, "vent", at, "", vent.where, &vent);
    out_.add_pipe(Stop::vapor, "vent-pipe", at, "pipe", vent.pipe);
    out_.add_if(Stop::vapor, "vent-valve", at, "valve", vent.valve);
    out_.add_fact(Stop::vapor, "flame-arrester", at, "flame_arrester", vent.flame_arrester, vent.where, &vent);
  }

  void list(const site::VaporReturn& vapor, const Place& of_tank) {
    Place at = within(of_tank, "vapor_return");
    out_.add(Stop::vapor, "vapor-return", at, "", vapor.where, &vapor);
    const site::VaporReturn* first = nullptr;  // where the pipe is entered first
    for (const site::Tank& tank : site_.tanks) {
      if (!tank.vapor_return) continue;
      const site::VaporReturn& one = *tank.vapor_return;
      if (&one != &vapor && (vapor.shared.empty() || one.shared != vapor.shared)) continue;
      add_products(at.products, tank);
      if (first == nullptr && one.pipe) first = &one;
    }
    if (first == &vapor) out_.add_pipe(Stop::vapor, "vapor-pipe", at, "pipe", vapor.pipe);
  }

  const site::Site& site_;
  PartList& out_;
};

}  // namespace

void list_tanks(const site::Site& site, PartList& out) {
  TankParts parts(site, out);
  for (const site::Tank& tank : site.tanks) parts.list(tank);
}

}  // namespace forecourse::handover
