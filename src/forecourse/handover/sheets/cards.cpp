#include <algorithm>
#include <cmath>

#include "forecourse/checks/rules/period.h"
#include "forecourse/handover/sheets/sheets.h"
#include "forecourse/handover/sheets/source.h"

// The card for the driver of a tanker, and the card for the wall.

namespace forecourse::handover {
namespace {

SheetSection list(const char* id, const char* title, bool ordered = false) {
  SheetSection out;
  out.id = id;
  out.title = title;
  out.ordered = ordered;
  return out;
}

void step(const char* id, const char* what, SheetSection& out) { out.rows.push_back(told_row(id, what)); }

SheetSection phones(std::initializer_list<const char*> who) {
  SheetSection out = list("phone", "Telephone");
  for (const char* one : who) {
    SheetRow row = text_row("phone", one);
    out.rows.push_back(std::move(row));
  }
  return out;
}

SheetSection emergency_stops(const SheetSource& source) {
  SheetSection out = list("emergency-stop", "Emergency stop");
  out.notes = {"Go to it only if no fuel and no vapor lies on the way; else cut the power from farther off."};
  for (const site::EmergencyStop& stop : source.site.emergency_stops) {
    SheetRow row = text_row("stop-place", "where it is", stop.id.text, "emergency_stop." + stop.id.text);
    if (stop.position) {
      row.figures = {{"on plan, first axis", Amount::height, stop.position->x.si()},
                     {"second axis", Amount::height, stop.position->y.si()}};
    } else {
      row.missing = "place not entered: write it here";
    }
    if (const auto height = entered(stop.height)) row.figures.push_back({"above the floor", Amount::depth, *height});
    row.where = stop.where;
    out.rows.push_back(std::move(row));
  }
  if (!out.rows.empty()) return out;
  SheetRow row = text_row("stop-place", "where it is");
  row.missing = "not entered: write it here";
  out.rows.push_back(std::move(row));
  return out;
}

SheetSection extinguishers(const SheetSource& source) {
  SheetSection out = list("extinguisher", "Fire extinguishers");
  for (const site::Extinguisher& one : source.site.extinguishers) {
    SheetRow row = text_row("extinguisher-place", "where it is", one.id.text, "extinguisher." + one.id.text);
    row.words = one.rating.empty() ? "rating not entered" : one.rating.text;
    if (one.position) {
      row.figures = {{"on plan, first axis", Amount::height, one.position->x.si()},
                     {"second axis", Amount::height, one.position->y.si()}};
    } else {
      row.missing = "place not entered: write it here";
    }
    row.where = one.where;
    out.rows.push_back(std::move(row));
  }
  if (!out.rows.empty()) return out;
  SheetRow row = text_row("extinguisher-place", "where they are");
  row.missing = "not entered: write it here";
  out.rows.push_back(std::move(row));
  return out;
}

const studies::TankRoom* room_at(const studies::TankTold& tank, double share) {
  const auto found = std::find_if(tank.rooms.begin(), tank.rooms.end(),
                                  [&](const auto& room) { return std::abs(room.share - share) < 1e-9; });
  return found == tank.rooms.end() ? nullptr : &*found;
}

const site::Tank* tank_named(const site::Site& site, const std::string& id) {
  const auto found =
      std::find_if(site.tanks.begin(), site.tanks.end(), [&](const site::Tank& one) { return one.id.text == id; });
  return found == site.tanks.end() ? nullptr : &*found;
}

std::string read_on(const site::Tank* tank) {
  if (tank == nullptr || !tank->reading || !tank->reading->taken) return "the day of the reading is not entered";
  return "read on " + checks::text(*tank->reading->taken);
}

class TankRows {
 public:
  TankRows(const SheetSource& source, const studies::TankTold& tank)
      : source_(source), tank_(tank), entered_(tank_named(source.site, tank.tank)) {}

  void add(SheetSection& out) const {
    out.rows.push_back(fill());
    if (!tank_.problem.empty()) {
      SheetRow row = told_row("room", "volume at 95 %", tank_.id, path());
      row.missing = "not determined: " + tank_.problem;
      out.rows.push_back(std::move(row));
      return;
    }
    constexpr double shutoff = 0.95, alarm = 0.90;  // \source [cfr_280, 280.20(c)(1)(ii)]
    const Top top = top_of(shutoff);
    out.rows.push_back(full(shutoff, alarm));
    out.rows.push_back(now(top));
    out.rows.push_back(alarm_row());
    out.rows.push_back(
        amount_row("read-before", "volume in it, read before the drop", tank_.id, path(), Amount::volume));
    out.rows.push_back(fits(top));
  }

 private:
  /// The volume up to which fuel may be dropped.
  struct Top {
    std::optional<double> volume;  ///< [m3]
    std::string by;                ///< "95 % of the capacity", or the device that acts before
  };

  /// The least of a share of the capacity and of the volumes at which devices act.
  [[nodiscard]] Top top_of(double share) const {
    const studies::TankRoom* room = room_at(tank_, share);
    Top out{room != nullptr ? std::optional(room->volume) : std::nullopt, "95 % of the capacity"};
    for (const studies::DeviceSet& one : tank_.overfill.set) {
      if (!out.volume || one.volume < *out.volume) out = {one.volume, one.what};
    }
    return out;
  }

  [[nodiscard]] SheetRow fits(const Top& top) const {
    SheetRow out =
        amount_row("fits", "what fits: volume at 95 %, or at which the lowest device acts, less what was read",
                   tank_.id, path(), Amount::volume);
    if (top.volume) {
      out.figures.push_back({"up to", Amount::volume, *top.volume});
      out.words = top.by;
    }
    if (!tank_.overfill.remarks.empty()) {
      out.missing = "not determined: a device may act before, at a volume that is not known";
    }
    return out;
  }

  [[nodiscard]] std::string path() const { return "tank." + tank_.tank; }

  [[nodiscard]] SheetRow fill() const {
    SheetRow out = told_row("product", "product", tank_.id, path());
    out.words = tank_.product.empty() ? "not entered" : tank_.product;
    if (entered_ != nullptr) {
      for (const site::Fill& one : entered_->fills) {
        if (!one.mark.empty()) out.words += ", mark of the fill: " + one.mark.text;
      }
    }
    return out;
  }

  [[nodiscard]] SheetRow full(double shutoff, double alarm) const {
    SheetRow out = told_row("volume-95", "volume at 95 % of the capacity", tank_.id, path());
    out.amount = Amount::volume;
    const studies::TankRoom* room = room_at(tank_, shutoff);
    set_value(out, room != nullptr ? std::optional(room->volume) : std::nullopt, "tank study", "not determined");
    if (const studies::TankRoom* at = room_at(tank_, alarm)) {
      out.figures.push_back({"at 90 %", Amount::volume, at->volume});
    }
    out.figures.push_back({"capacity", Amount::volume, tank_.capacity});
    return out;
  }

  [[nodiscard]] SheetRow now(const Top& top) const {
    SheetRow out =
        told_row("room", "room by the reading of the site file, up to 95 % or the lowest device", tank_.id, path());
    out.amount = Amount::volume;
    const bool known = top.volume && tank_.now;
    set_value(out, known ? std::optional(std::max(0.0, *top.volume - tank_.now->volume)) : std::nullopt, "tank study",
              "not determined: no reading is entered");
    if (tank_.now) out.figures.push_back({"in it then", Amount::volume, tank_.now->volume});
    if (out.value && !tank_.overfill.remarks.empty()) out.missing = "a device may act before";
    if (out.value) out.words = read_on(entered_) + "; read it again before the drop";
    return out;
  }

  [[nodiscard]] SheetRow alarm_row() const {
    SheetRow out = told_row("overfill", "overfill device", tank_.id, path());
    for (const studies::DeviceSet& one : tank_.overfill.set) {
      out.figures.push_back({one.what, Amount::volume, one.volume});
      out.figures.push_back({"of the capacity", Amount::share, one.share});
    }
    for (const std::string& one : tank_.overfill.remarks) out.missing += (out.missing.empty() ? "" : "; ") + one;
    if (tank_.overfill.set.empty() && out.missing.empty()) out.missing = "none is entered";
    return out;
  }

  const SheetSource& source_;
  const studies::TankTold& tank_;
  const site::Tank* entered_;
};

SheetSection rooms(const SheetSource& source) {
  SheetSection out = list("tank", "Tanks: what fits");
  if (!source.studied.tank) {
    out.notes = {"The sizes of the tanks are not entered: nothing is told of their room."};
    for (const site::Tank& tank : source.site.tanks) {
      out.rows.push_back(amount_row("fits", "what fits, by the chart of the tank", tank.id.text, "tank." + tank.id.text,
                                    Amount::volume));
    }
    return out;
  }
  out.notes = {"No more than what fits is connected. Fuel that drains from the hose counts."};
  for (const studies::TankTold& tank : source.studied.tank->tanks) TankRows(source, tank).add(out);
  return out;
}

SheetSection connecting(const SheetSource& source) {
  SheetSection out = list("connect", "Order of work (common practice)", true);
  const bool vapor = std::any_of(source.site.tanks.begin(), source.site.tanks.end(),
                                 [](const site::Tank& tank) { return tank.vapor_return.has_value(); });
  step("park", "Engine off, brake on, cones out, extinguisher beside you. No flame, no engine, nobody near.", out);
  step("product", "Read product and mark of the fill; it is the product on the paper of that compartment.", out);
  step("read", "Read the level and the water; work out what fits, and write it down.", out);
  step("bond", "Bond and ground as your company's rules say, before anything is connected.", out);
  if (vapor) {
    step("vapor", "Vapor hose first: to the truck, then to the tank. See that it opens.", out);
  } else {
    step("vapor", "No vapor return is entered for this station: ask before the drop where vapor goes.", out);
  }
  step("fill", "Then the fill: elbow to the fill, hose to the elbow and to the truck, everything tight.", out);
  step("open", "Open slowly; stay at the valve, see it run, and hear the alarm.", out);
  step("shut", "Shut at the truck first; drain the hose into the tank; undo the fill, then the vapor hose.", out);
  step("after", "Caps and covers on; read the level again; write it down.", out);
  return out;
}

SheetSection stalls() {
  SheetSection out = list("stall", "The drop slows or stalls", true);
  step("never", "Never open a connection: it may be under pressure, with fuel standing above you.", out);
  step("shut", "Shut the truck's valve. Keep people and engines away.", out);
  step("wait", "Leave everything connected. Do not lift the hose, do not pull a cap, do not tap the overfill valve.",
       out);
  step("ask", "Call the station and your company. Read the level: an overfill valve may have shut.", out);
  step(
      "drain",
      "The hose is drained only where there is room, once your company or a technician says that the pressure is gone.",
      out);
  return out;
}

SheetSection fuels(const SheetSource& source) {
  SheetSection out = list("fuel", "What is here: each tank holds up to");
  for (const site::Tank& tank : source.site.tanks) {
    SheetRow row = told_row("fuel", "holds up to, and of what product", tank.id.text, "tank." + tank.id.text);
    row.words = tank.product.empty() ? "product not entered" : tank.product.text;
    row.amount = Amount::volume;
    std::optional<double> capacity = entered(tank.capacity);
    std::string by = "entered";
    if (source.studied.tank) {
      for (const studies::TankTold& told : source.studied.tank->tanks) {
        if (told.tank == tank.id.text && told.problem.empty() && !capacity) {
          capacity = told.capacity;
          by = "tank study";
        }
      }
    }
    set_value(row, capacity, by, "volume not entered");
    for (const site::Product& product : source.site.products) {
      if (product.id.text == tank.product.text && !product.kind.empty()) row.words += ", " + product.kind.text;
    }
    out.rows.push_back(std::move(row));
  }
  return out;
}

SheetSection never() {
  SheetSection out = list("never", "Never");
  step("never-pump", "Never start the pump again to see whether it still leaks.", out);
  step("never-sump", "Never go into a sump or under a dispenser.", out);
  step("never-engine",
       "Never start an engine or use a switch or a telephone where it smells of fuel: not the emergency stop "
       "either, if fuel or vapor lies about it.",
       out);
  step("never-wash", "Never wash fuel into a drain.", out);
  step("never-alarm", "Never silence an alarm and go on.", out);
  return out;
}

}  // namespace

Sheet delivery_card(const SheetSource& source) {
  Sheet out;
  out.kind = SheetKind::delivery_card;
  out.title = "Card for the driver of a delivery";
  out.first = {"Spill, overfill or fire: shut the truck's valve."};
  for (const std::string& one : first_in_an_emergency()) out.first.push_back(one);
  out.cautions = {"A drop that stalls may be under pressure: never open a connection.",
                  "It advises. Your company's rules and the local authority's come first.",
                  "A computed room is no reading: read the tank before the drop."};
  out.sections = {rooms(source), connecting(source), stalls(), emergency_stops(source),
                  phones({"fire service", "station", "your company"})};
  return out;
}

Sheet emergency_card(const SheetSource& source) {
  Sheet out;
  out.kind = SheetKind::emergency_card;
  out.title = "Emergency";
  out.first = first_in_an_emergency();
  out.cautions = {"Life before fuel: go, if you are not sure.", "It advises; the fire service decides."};
  out.sections = {emergency_stops(source), phones({"fire service", "owner", "electrician", "authority for spills"}),
                  extinguishers(source), fuels(source), never()};
  return out;
}

}  // namespace forecourse::handover
