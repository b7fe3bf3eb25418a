#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/time_chart.h"
#include "forecourse/report/units.h"
#include "forecourse/report/word_table.h"
#include "forecourse/studies/delivery/delivery.h"

namespace forecourse::report {

/// How it goes, in a few sentences.
[[nodiscard]] std::vector<std::string> delivery_answer(const studies::DeliveryResult& result, site::Display display,
                                                       Glyphs glyphs);
/// One line for each case.
[[nodiscard]] WordTable case_table(const studies::DeliveryResult& result, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable drop_table(const studies::DeliveryRun& run, site::Display display, Glyphs glyphs);
/// Highest velocities beside the limits against static charge.
[[nodiscard]] WordTable velocity_table(const studies::DeliveryRun& run, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable delivery_tank_table(const studies::DeliveryRun& run, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable ullage_table(const studies::DeliveryRun& run, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable delivery_event_table(const studies::DeliveryRun& run, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable vapor_table(const studies::DeliveryRun& run, site::Display display, Glyphs glyphs);
[[nodiscard]] WordTable delivery_span_table(const studies::DeliveryResult& result, site::Display display,
                                            Glyphs glyphs);
/// What is left in the hoses, and where it goes; sentences.
[[nodiscard]] std::vector<std::string> hose_words(const studies::DeliveryRun& run, site::Display display,
                                                  Glyphs glyphs);
/// Rate, ullage pressure with the setting of the vent, and depth, over time.
[[nodiscard]] svg::TimeChart delivery_chart(const studies::DeliveryRun& run, site::Display display,
                                            const std::string& id);

}  // namespace forecourse::report
