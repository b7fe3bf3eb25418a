#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/curve_chart.h"
#include "forecourse/report/units.h"
#include "forecourse/report/word_table.h"
#include "forecourse/studies/line_test/line_test.h"

namespace forecourse::report {

/// The answer for one line, in sentences.
[[nodiscard]] std::vector<std::string> line_test_answer(const studies::LineTest& line, site::Display display,
                                                        Glyphs glyphs);

/// What a passing, a failing and a measured drop of pressure prove, each a sentence.
[[nodiscard]] std::vector<std::string> proof_sentences(const studies::LineTest& line, site::Display display,
                                                       Glyphs glyphs);

/// The answer for one leak detector, in sentences.
[[nodiscard]] std::vector<std::string> detector_answer(const studies::DetectorTold& detector, site::Display display,
                                                       Glyphs glyphs);

/// Every line: what it holds, how it yields, what temperature does.
[[nodiscard]] WordTable lines_table(const studies::LineTestResult& result, site::Display display, Glyphs glyphs);
/// Every rate that a detector must find: false trips, quiet times.
[[nodiscard]] WordTable detection_table(const studies::DetectorTold& detector, site::Display display, Glyphs glyphs);
/// What a leak of the published rate passes at the site's pressures.
[[nodiscard]] WordTable catch_table(const studies::DetectorTold& detector, site::Display display, Glyphs glyphs);

/// Seeming rates against time, and the pressure of the shut line.
[[nodiscard]] svg::CurveChart rate_chart(const studies::LineTest& line, site::Display display, const std::string& id);
[[nodiscard]] svg::CurveChart shut_pressure_chart(const studies::LineTest& line, site::Display display,
                                                  const std::string& id);

/// "The line stands still for 8.0 h (the station is closed)."
[[nodiscard]] std::string quiet_sentence(const studies::LineTestResult& result, Glyphs glyphs);

}  // namespace forecourse::report
