#pragma once

#include <string>
#include <vector>

#include "forecourse/report/units.h"
#include "forecourse/report/word_table.h"
#include "forecourse/studies/tank/tank.h"

namespace forecourse::report {

/// One line per tank: what it holds, what is in it, what room it has.
[[nodiscard]] WordTable tank_table(const studies::TankResult& result, site::Display display, Glyphs glyphs);
/// One line per place of a tank: dip now and at 90 % and 95 %, and what it does not see.
[[nodiscard]] WordTable place_table(const studies::TankTold& tank, site::Display display, Glyphs glyphs);
/// The published routes, one line each.
[[nodiscard]] WordTable route_table(const studies::TankTold& tank, site::Display display, Glyphs glyphs);
/// What is set now.
[[nodiscard]] WordTable set_table(const studies::TankTold& tank, site::Display display, Glyphs glyphs);
/// What a level chart or a share of the height would set.
[[nodiscard]] WordTable wrong_table(const studies::TankTold& tank, site::Display display, Glyphs glyphs);
/// The volume chart, every line of it or one of so many.
[[nodiscard]] WordTable chart_table(const studies::TankTold& tank, site::Display display, Glyphs glyphs,
                                    std::size_t most);
[[nodiscard]] WordTable fit_table(const studies::CalibrationTold& fit, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable fit_chart_table(const studies::CalibrationTold& fit, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable siphon_table(const studies::SiphonTold& siphon, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable draw_table(const studies::SiphonTold& siphon, site::Display display, Glyphs glyphs);

/// What is worth saying of a tank, sentences.
[[nodiscard]] std::vector<std::string> tank_remarks(const studies::TankTold& tank, site::Display display,
                                                    Glyphs glyphs);
[[nodiscard]] std::vector<std::string> fit_remarks(const studies::CalibrationTold& fit, site::Display display,
                                                   Glyphs glyphs);
[[nodiscard]] std::vector<std::string> siphon_remarks(const studies::SiphonTold& siphon, site::Display display,
                                                      Glyphs glyphs);

/// "T1, T2"
[[nodiscard]] std::string siphon_name(const studies::SiphonTold& siphon);

/// A share as people say it: "95.0 %".
[[nodiscard]] std::string percent(double share, Glyphs glyphs);

}  // namespace forecourse::report
