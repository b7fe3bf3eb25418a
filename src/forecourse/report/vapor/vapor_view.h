#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/curve_chart.h"
#include "forecourse/report/units.h"
#include "forecourse/report/word_table.h"
#include "forecourse/studies/vapor/vapor.h"

namespace forecourse::report {

/// The answer in sentences: throughput and tier, what is lost in a month.
[[nodiscard]] std::vector<std::string> vapor_answer(const studies::VaporResult& result, site::Display display,
                                                    Glyphs glyphs);

/// What each tier of the federal rule asks.
[[nodiscard]] WordTable tier_table(const studies::VaporResult& result);

[[nodiscard]] WordTable pressure_table(const studies::VaporResult& result, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable loss_table(const studies::ProductVapor& product, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable static_table(const studies::VaporResult& result, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable leak_table(site::Display display, Glyphs glyphs);

// Product care.
[[nodiscard]] WordTable uptake_table(const studies::ProductCare& care, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable water_table(const studies::ProductCare& care, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable stock_table(const studies::ProductCare& care, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable material_table(const studies::ProductCare& care);
[[nodiscard]] WordTable tank_material_table(const studies::ProductCare& care);

/// True vapor pressure of every product against temperature.
[[nodiscard]] svg::CurveChart pressure_chart(const studies::VaporResult& result, site::Display display);
/// Target of the static pressure test against ullage, of the station's count of nozzles.
[[nodiscard]] svg::CurveChart static_chart(const studies::VaporResult& result, site::Display display);

}  // namespace forecourse::report
