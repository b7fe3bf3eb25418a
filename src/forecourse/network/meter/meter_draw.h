#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/site/records/proving.h"
#include "forecourse/site/site.h"

namespace forecourse::network {

/// One draw of a proving with what it says of the meter. An error is positive where the meter tells more than it gives.
struct MeterDraw {
  site::records::Proving entered;
  double indicated = 0.0;              ///< [m3]
  std::optional<double> read;          ///< [m3] on the scale of the measure
  std::optional<double> held;          ///< [m3] that the measure held, at its temperature
  std::optional<double> given;         ///< [m3] the same at the temperature of the meter
  std::optional<double> error;         ///< [1]; empty: `problem`
  std::optional<double> error_volume;  ///< [m3] indicated less given
  std::optional<double> plain_error;   ///< [1] without temperatures
  double expansion = 0.0;              ///< [1/K] of the measure, as used
  double reference = 0.0;              ///< [K] as used
  bool reference_by_default = false;
  std::string fuel_by;                ///< how the fuel's volume was brought from measure to meter; empty: it was not
  std::vector<std::string> left_out;  ///< what was not corrected for, and what to enter
  bool one_sided = false;             ///< one temperature of the two is entered
  std::string problem;                ///< why there is no error
};

/// [K] at which the scale of a measure holds where nobody says so: 60 degF.
/// \source [nist_prover_article, reference temperature]
[[nodiscard]] double default_measure_reference();

/// What a draw says of its meter: the measure's reading, brought to its volume at its temperature and to the
/// temperature of the meter by the fuel's volume correction. Whatever is not known is left out, and told.
///
/// \param expansion of a measure that tells none of its own [1/K]; empty: it is left out
/// \error of the reading of the measure, of the two temperatures (0.12 % of gasoline's volume a kelvin between them)
/// \source [nist_prover_article, volume off the reference temperature]; [api_11_1_2004, 11.1.6.1] for the fuel
[[nodiscard]] MeterDraw meter_draw(const site::Site& site, const site::records::Proving& draw,
                                   const std::optional<double>& expansion);

}  // namespace forecourse::network
