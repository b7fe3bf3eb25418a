#pragma once

#include <string>

#include "forecourse/base/default_used.h"
#include "forecourse/site/site.h"

namespace forecourse::report {

/// What is shown, which fixes its unit and its decimals in each unit system.
///
///     measure      us              si
///     flow         gpm      0.00   L/min   0.0
///     pressure     psi      0.0    kPa     0      a gauge pressure or a difference: the label beside it says which
///     length       ft       0.0    m       0.00
///     bore         in       0.00   mm      0.0
///     velocity     ft/s     0.0    m/s     0.00
///     head         ft       0.0    m       0.00
///     density      lb/gal   0.000  kg/m³   0.0
///     viscosity    cP       0.00   mPa·s   0.00
///     temperature  °F       0.0    °C      0.0
///     volume       gal      0.00   L       0.0
///     leak         gph      0.00   L/h     0.00
///     force        lbf      0      N       0
///     moment       lbf·ft   0      N·m     0
///     area         ft²      0.0    m²      0.00
///     small_area   in²      0.00   mm²     0
///     angle        deg      0      deg     0
///     heat         kW       0      kW      0
///     heat_flux    kW/m²    0.00   kW/m²   0.00
///     solid_volume ft³      0      m³      0.00   soil and concrete
///     unit_weight  lbf/ft³  0.0    kN/m³   0.00
///     mass         lb       0      kg      0
///     ullage_pressure inH2O 0.00   Pa      0      above the atmosphere, of vapor
///     vapor_loss   g/gal    0.00   g/m3    0      mass of vapor for each volume of fuel
///     vapor_leak   ft³/h    0.00   L/h     0.0    of vapor
///     small_leak   gph      0.000  L/h     0.000
///     caught       mL       0      mL      0      in a cylinder, in a minute
///     temperature_difference °F 0.0 °C    0.0
///     draw         in³      0.0    mL      0      error of a meter in a draw
///     per_degree   psi/°F   0.0    kPa/°C  0      pressure of a shut line
enum class Measure {
  flow,
  pressure,
  length,
  bore,
  velocity,
  head,
  density,
  viscosity,
  temperature,
  volume,
  leak,
  force,
  moment,
  area,
  small_area,
  angle,
  heat,
  heat_flux,
  solid_volume,
  unit_weight,
  mass,
  ullage_pressure,
  vapor_loss,
  vapor_leak,
  small_leak,
  caught,
  temperature_difference,
  per_degree,
  draw,
};

/// Which characters a number may use.
enum class Glyphs {
  ascii,    ///< '-', no blank in thousands, '-' where there is no value
  unicode,  ///< U+2212, no-break space in thousands, U+2013 where there is no value
};

/// The unit as printed; the same in every glyph set but for "kg/m3", "mPa.s", "degF", "degC" in ASCII.
[[nodiscard]] std::string unit_label(Measure measure, site::Display display, Glyphs glyphs = Glyphs::unicode);

/// Decimals that a measure is shown with.
[[nodiscard]] int decimals(Measure measure, site::Display display);

/// An SI value in the unit shown. The number is not rounded.
[[nodiscard]] double shown_value(Measure measure, site::Display display, double si);

/// A number with fixed decimals, whatever the locale: "−3.0", "8 147". What rounds to zero has no sign;
/// NaN and infinity are shown as a dash, never as letters.
[[nodiscard]] std::string number(double value, int decimals, Glyphs glyphs = Glyphs::unicode);

/// An SI value as its number alone, for tables that have the unit in their heading.
[[nodiscard]] std::string number(Measure measure, site::Display display, double si, Glyphs glyphs = Glyphs::unicode);

/// An SI value with its unit, joined by a no-break space (a blank in ASCII): "12.25 gpm".
[[nodiscard]] std::string with_unit(Measure measure, site::Display display, double si, Glyphs glyphs = Glyphs::unicode);

/// A span of time as people say it, to three digits: "0.10 s", "45.0 s", "6.9 min", "3.5 h", "2.1 d".
[[nodiscard]] std::string time_span(double seconds, Glyphs glyphs = Glyphs::unicode);

/// A default's value with a unit that people read: roughness in mm, bore in in or mm, viscosity in cP or mPa·s;
/// an unknown unit stays as it is. To four significant digits.
[[nodiscard]] std::string default_value(const DefaultUsed& used, site::Display display,
                                        Glyphs glyphs = Glyphs::unicode);

}  // namespace forecourse::report
