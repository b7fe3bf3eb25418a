#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/meter_dots.h"
#include "forecourse/report/units.h"
#include "forecourse/report/word_table.h"
#include "forecourse/studies/meter/meter.h"

namespace forecourse::report {

/// The answer for one meter, in sentences: its error, who loses, what it costs in a year, how it drifts.
[[nodiscard]] std::vector<std::string> meter_answer(const studies::MeterTold& meter, site::Display display,
                                                    Glyphs glyphs);
/// Every meter with its last proving.
[[nodiscard]] WordTable meters_table(const studies::MeterResult& result, site::Display display, Glyphs glyphs);
/// The worst draw of the last proving against each limit, in both forms.
[[nodiscard]] WordTable meter_limit_table(const studies::MeterTold& meter, const studies::MeterResult& result,
                                          site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable proving_table(const studies::MeterTold& meter, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable draw_table(const studies::MeterTold& meter, site::Display display, Glyphs glyphs);
/// What was left out of draws, each once.
[[nodiscard]] std::vector<std::string> left_out_of(const studies::MeterTold& meter);
/// Which meters explain the difference of a book.
[[nodiscard]] std::vector<std::string> book_meters_answer(const studies::MetersOfBook& book, site::Display display,
                                                          Glyphs glyphs);
[[nodiscard]] WordTable share_table(const studies::MetersOfBook& book, site::Display display, Glyphs glyphs);

/// The error of each meter with its draws, and the limits in both forms.
[[nodiscard]] svg::MeterDots meter_dots(const studies::MeterResult& result, site::Display display);

}  // namespace forecourse::report
