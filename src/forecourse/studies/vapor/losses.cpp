#include "forecourse/studies/vapor/losses.h"

#include <fmt/format.h>

#include <utility>

#include "forecourse/parts/vapor/emissions.h"

namespace forecourse::studies {
namespace {

using parts::Loading;
using parts::StationLoss;

class Losses {
 public:
  Losses(const FillingHere& filling, ProductVapor& product) : filling_(filling), product_(product) {}

  void tell() {
    const auto here = [&](bool submerged, bool balanced) -> std::optional<bool> {
      if (!filling_.balanced || !filling_.submerged) return std::nullopt;
      return *filling_.balanced == balanced && (balanced || *filling_.submerged == submerged);
    };
    factor(StationLoss::filling_submerged, here(true, false));
    factor(StationLoss::filling_splash, here(false, false));
    factor(StationLoss::filling_balanced, here(true, true));
    factor(StationLoss::breathing, true);
    factor(StationLoss::refueling, true);
    factor(StationLoss::refueling_controlled, false);
    factor(StationLoss::spillage, true);
    equation("filling the tank, submerged", Loading::dedicated_submerged, 1.0, here(true, false));
    equation("filling the tank, splash", Loading::dedicated_splash, 1.0, here(false, false));
    balanced_equation(here(true, true));
    refueling();
    sum();
  }

 private:
  void add(LossTold loss) {
    if (loss.mass_per_volume && product_.throughput) loss.mass_per_month = *loss.mass_per_volume * *product_.throughput;
    product_.losses.push_back(std::move(loss));
  }

  void factor(StationLoss which, std::optional<bool> here) {
    const parts::StationFactor& factor = parts::station_factor(which);
    add({factor.what,
         "published factor",
         factor.mass_per_volume,
         {},
         factor.status == parts::FigureStatus::read ? LossStatus::read : LossStatus::unverified,
         here,
         {}});
  }

  /// By the loading equation, times the share that is not taken back.
  void equation(const char* what, Loading loading, double share, std::optional<bool> here) {
    const double saturation = parts::saturation_factor(loading);
    LossTold loss{what, fmt::format("loading equation, S {:.2f}", saturation), {}, {}, LossStatus::read, here, {}};
    if (!product_.true_vapor_pressure) {
      loss.missing = product_.pressure_source;
    } else if (!product_.molar_mass) {
      loss.missing = product_.molar_mass_source;
    } else {
      loss.mass_per_volume =
          share *
          parts::loading_loss({*product_.true_vapor_pressure, *product_.molar_mass, *product_.temperature}, saturation);
    }
    add(std::move(loss));
  }

  void balanced_equation(std::optional<bool> here) {
    if (filling_.efficiency) {
      equation("filling the tank, submerged, vapor balanced", Loading::balanced_submerged, 1.0 - *filling_.efficiency,
               here);
      return;
    }
    add({"filling the tank, submerged, vapor balanced",
         "loading equation, S 1.00",
         {},
         {},
         LossStatus::read,
         here,
         "enter vapor_return.efficiency, or its test"});
  }

  void refueling() {
    const char* what = "refueling of vehicles, without control";
    const std::string model = "equation of the emission model, vehicle as warm as the fuel";
    LossTold newer{what, model, {}, {}, LossStatus::read, true, {}};
    LossTold older{what, "older equation, vehicle as warm as the fuel", {}, {}, LossStatus::read, true, {}};
    if (!product_.reid_vapor_pressure || !product_.temperature) {
      newer.missing = older.missing = "enter reid_vapor_pressure and the temperature";
    } else {
      const parts::Refueling at{*product_.temperature, 0.0, *product_.reid_vapor_pressure};
      newer.mass_per_volume = parts::refueling_loss(at);
      older.mass_per_volume = parts::refueling_loss_older(at);
    }
    add(std::move(newer));
    add(std::move(older));
  }

  /// By published factors alone: the equations tell of filling and refueling only.
  void sum() {
    if (!product_.throughput) return;
    const auto of = [&](StationLoss which) {
      return *product_.throughput * parts::station_factor(which).mass_per_volume;
    };
    const double always = of(StationLoss::breathing) + of(StationLoss::refueling) + of(StationLoss::spillage);
    product_.with_stage_one = always + of(StationLoss::filling_balanced);
    if (!filling_.submerged) return;
    product_.without_stage_one =
        always + of(*filling_.submerged ? StationLoss::filling_submerged : StationLoss::filling_splash);
    if (filling_.balanced) product_.lost = *filling_.balanced ? product_.with_stage_one : product_.without_stage_one;
  }

  const FillingHere& filling_;
  ProductVapor& product_;
};

}  // namespace

void tell_losses(const FillingHere& filling, ProductVapor& product) { Losses(filling, product).tell(); }

}  // namespace forecourse::studies
