#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/figure.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

// Vapor of the vehicle's tank drawn back while it is filled (stage II), and what decides whether it must be.

constexpr double months_of_a_year = 12.0;

std::optional<bool> gives_gasoline(const site::Site& site, const site::Dispenser& dispenser) {
  return any_is(dispenser.inlets,
                [&](const site::Inlet& inlet) { return is_gasoline(product_of(site, inlet.product)); });
}

std::vector<FigureAt> recovery_fitted(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) {
    const std::optional<bool> gasoline = gives_gasoline(facts.site, dispenser);
    if (gasoline && !*gasoline) continue;
    const site::Fact fitted = gasoline ? site::Fact(dispenser.vapor_recovery.has_value()) : std::nullopt;
    out.push_back(entered_fact(dispenser.id.text, dispenser.where, fitted, "enter kind of the product"));
  }
  return out;
}

/// Gasoline sold in a year; not known while the sales of one product are not.
std::vector<FigureAt> gasoline_per_year(const Facts& facts) {
  FigureAt out;
  out.subject = "station";
  out.where = facts.site.operations ? facts.site.operations->where : facts.site.where;
  double sum = 0.0;
  bool known = facts.site.operations.has_value();
  bool kinds_known = true;
  for (const site::Product& product : facts.site.products) {
    const std::optional<bool> gasoline = is_gasoline(&product);
    if (gasoline && !*gasoline) continue;
    kinds_known = kinds_known && gasoline;
    bool told = false;
    if (facts.site.operations) {
      for (const site::Throughput& one : facts.site.operations->throughput) {
        if (one.product != product.id || !one.per_month) continue;
        told = true;
        sum += months_of_a_year * one.per_month->likely.si();
      }
    }
    known = known && told;
  }
  if (!kinds_known) {
    out.enter = "enter kind of the product";
  } else if (known) {
    out.value = sum;
  } else {
    out.enter = "enter throughput of each gasoline under [operations]";
  }
  return {out};
}

std::vector<FigureAt> new_or_refurbished(const Facts& facts) {
  return {entered_fact("station", facts.site.where, facts.site.new_or_refurbished,
                       "enter new_or_refurbished under [site]")};
}

std::vector<FigureAt> lived_above(const Facts& facts) {
  return {entered_fact("station", facts.site.where, facts.site.lived_above, "enter lived_above under [site]")};
}

template <class Read>
std::vector<FigureAt> each_recovery(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Dispenser& dispenser : facts.site.dispensers) {
    if (dispenser.vapor_recovery) out.push_back(read(dispenser.id.text, *dispenser.vapor_recovery));
  }
  return out;
}

std::vector<FigureAt> recovery_capture(const Facts& facts) {
  return each_recovery(facts, [](const std::string& id, const site::VaporRecovery& recovery) {
    return entered_amount(id, recovery.where, recovery.capture, "enter capture of the vapor recovery");
  });
}

std::vector<FigureAt> recovery_ratio(const Facts& facts) {
  return each_recovery(facts, [](const std::string& id, const site::VaporRecovery& recovery) {
    return entered_amount(id, recovery.where, recovery.per_fuel, "enter per_fuel of the vapor recovery");
  });
}

std::vector<FigureAt> recovery_monitored(const Facts& facts) {
  return each_recovery(facts, [](const std::string& id, const site::VaporRecovery& recovery) {
    return entered_fact(id, recovery.where, recovery.monitored, "enter monitored of the vapor recovery");
  });
}

std::vector<FigureAt> recovery_tested(const Facts& facts) {
  return each_recovery(facts, [&](const std::string& id, const site::VaporRecovery& recovery) {
    return last_tested(facts, id, recovery.where, recovery.tested, {site::records::TestKind::vapor_recovery, {id}},
                       "enter tested of the vapor recovery");
  });
}

}  // namespace

std::vector<Figure> recovery_figures() {
  constexpr auto amount = FigureKind::amount;
  constexpr auto fact = FigureKind::fact;
  constexpr auto fuel = Measured::fuel;
  const QuantityKind* const share = &Ratio::kind();
  return {
      {"recovery-fitted", "vapor recovery at a dispenser of gasoline", fact, nullptr, "", fuel, recovery_fitted},
      {"gasoline-per-year", "gasoline sold in a year", amount, &Volume::kind(), "m3", fuel, gasoline_per_year},
      {"new-or-refurbished", "a station that is new or refurbished", fact, nullptr, "", fuel, new_or_refurbished},
      {"lived-above", "people who live or work above the station", fact, nullptr, "", fuel, lived_above},
      {"recovery-capture", "share of the vapor that is captured", amount, share, "share", fuel, recovery_capture},
      {"recovery-ratio", "volume of vapor for a volume of fuel", amount, share, "share", fuel, recovery_ratio},
      {"recovery-monitored", "vapor recovery that is watched by itself", fact, nullptr, "", fuel, recovery_monitored},
      {"recovery-tested", "last test of the vapor recovery", FigureKind::day, nullptr, "", Measured::age,
       recovery_tested},
  };
}

}  // namespace forecourse::checks
