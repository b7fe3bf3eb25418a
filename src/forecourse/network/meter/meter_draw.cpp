#include "forecourse/network/meter/meter_draw.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "forecourse/base/api_units.h"
#include "forecourse/network/volume_change.h"
#include "forecourse/parts/meter/test_measure.h"

namespace forecourse::network {
namespace {

namespace records = site::records;

/// A scale ends, and a reading is far off, at this share of the nominal volume. common practice, no source
constexpr double neck = 0.1;

template <class Q>
std::optional<double> si(const std::optional<Q>& entered) {
  return entered ? std::optional(entered->si()) : std::nullopt;
}

const site::Hose* hose_of(const site::Site& site, const std::string& id) {
  for (const site::Dispenser& dispenser : site.dispensers) {
    for (const site::Hose& hose : dispenser.hoses) {
      if (hose.id.text == id) return &hose;
    }
  }
  return nullptr;
}

VolumeChange change_of(const site::Site& site, const std::string& product, double from, double to) {
  const auto found = std::find_if(site.products.begin(), site.products.end(),
                                  [&](const site::Product& p) { return p.id.text == product; });
  if (found == site.products.end()) return {std::nullopt, "enter the product of the hose"};
  return volume_change(*found, from, to);
}

/// What a hose gives, from one temperature to another; of a blended hose each product by its share.
VolumeChange change_of(const site::Site& site, const site::Hose& hose, double from, double to) {
  if (hose.blend.empty()) return change_of(site, hose.product.text, from, to);
  VolumeChange out{0.0, {}};
  for (const site::BlendShare& part : hose.blend) {
    VolumeChange one = change_of(site, part.product.text, from, to);
    if (!one.factor) return one;
    *out.factor += part.share.likely.si() * *one.factor;
    out.words = one.words;
  }
  return out;
}

class Drawn {
 public:
  Drawn(const site::Site& site, const records::Proving& entered, const std::optional<double>& expansion)
      : site_(site), expansion_(expansion) {
    out_.entered = entered;
  }

  MeterDraw judge() {
    read();
    if (!out_.problem.empty()) return std::move(out_);
    out_.held = out_.read;
    correct_measure();
    out_.given = out_.held;
    correct_fuel();
    out_.error = parts::meter_error(out_.indicated, *out_.given);
    out_.error_volume = out_.indicated - *out_.given;
    out_.plain_error = parts::meter_error(out_.indicated, *out_.read);
    return std::move(out_);
  }

 private:
  [[nodiscard]] const records::Proving& entered() const { return out_.entered; }

  void read() {
    out_.indicated = si(entered().indicated).value_or(0.0);
    const std::optional<double> nominal = si(entered().measure);
    const std::optional<double> scale = si(entered().scale);
    if (!(out_.indicated > 0.0)) {
      out_.problem = "what the meter told is not above zero";
    } else if (entered().measured && scale) {
      out_.problem = "both measured and scale are entered: enter measured, or measure with scale";
    } else if (!entered().measured && !nominal) {
      out_.problem = "enter measured, or measure with scale";
    } else if (!entered().measured && !scale) {
      out_.problem = "enter scale, what was read on the neck of the measure: \"0 in3\" at its nominal volume";
    } else if (scale && std::abs(*scale) > neck * *nominal) {
      out_.problem = fmt::format("scale is {:.0f} % of the measure, more than a neck shows: was it in another unit?",
                                 100.0 * std::abs(*scale) / *nominal);
    }
    if (!out_.problem.empty()) return;
    const double read = entered().measured ? entered().measured->si() : *nominal + *scale;
    if (std::abs(read - out_.indicated) > neck * out_.indicated) {
      out_.problem = fmt::format("indicated and measured differ by {:.0f} %: is one of them in another unit?",
                                 100.0 * std::abs(read / out_.indicated - 1.0));
      return;
    }
    out_.read = read;
  }

  void correct_measure() {
    const std::optional<double> own = si(entered().expansion);
    const std::optional<double> expansion = own ? own : expansion_;
    out_.expansion = expansion.value_or(0.0);
    out_.reference_by_default = !entered().reference_temperature;
    out_.reference = si(entered().reference_temperature).value_or(default_measure_reference());
    if (!expansion) {
      out_.left_out.emplace_back("the measure: enter its expansion, 0 to leave it out");
    } else if (*expansion == 0.0) {
      out_.left_out.emplace_back("the measure: its expansion is entered as 0");
    } else if (!entered().measure_temperature) {
      out_.left_out.emplace_back("the measure: enter measure_temperature");
    } else {
      out_.held = parts::true_volume(*out_.read, *expansion, entered().measure_temperature->si(), out_.reference);
    }
  }

  void correct_fuel() {
    const auto& in_measure = entered().measure_temperature;
    const auto& in_meter = entered().meter_temperature;
    out_.one_sided = in_measure.has_value() != in_meter.has_value();
    if (!in_measure || !in_meter) {
      out_.left_out.emplace_back(!in_measure && !in_meter ? "the fuel: enter measure_temperature and meter_temperature"
                                 : in_meter               ? "the fuel: enter measure_temperature too"
                                                          : "the fuel: enter meter_temperature too");
      return;
    }
    const site::Hose* hose = hose_of(site_, entered().hose.text);
    const VolumeChange change =
        hose == nullptr ? VolumeChange{std::nullopt, "the station has no hose '" + entered().hose.text + "'"}
                        : change_of(site_, *hose, in_measure->si(), in_meter->si());
    if (!change.factor) {
      out_.left_out.push_back("the fuel: " + change.words);
      return;
    }
    out_.given = *out_.held * *change.factor;
    out_.fuel_by = change.words;
  }

  const site::Site& site_;
  const std::optional<double>& expansion_;
  MeterDraw out_;
};

}  // namespace

double default_measure_reference() { return kelvin_from_fahrenheit(60.0); }

MeterDraw meter_draw(const site::Site& site, const records::Proving& draw, const std::optional<double>& expansion) {
  return Drawn(site, draw, expansion).judge();
}

}  // namespace forecourse::network
