#pragma once

#include <string>
#include <vector>

#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// What the control of a piping makes of its pumps: how it is set, which pumps run and why, where else they may rest.
/// Sentences; empty where no control moves pumps.
[[nodiscard]] std::vector<std::string> control_in_words(const studies::SystemFlow& system, site::Display display,
                                                        Glyphs glyphs = Glyphs::unicode);

/// What there is to say of the pumps beyond their table: when a weaker one opens, how fast one that delivers nothing
/// warms, how its flow stands to that of best efficiency. Sentences; may be empty.
[[nodiscard]] std::vector<std::string> pumps_in_words(const studies::SystemFlow& system, site::Display display,
                                                      Glyphs glyphs = Glyphs::unicode);

/// The ways in which the pumps of a control can run: "P1 + P2", and what the control makes of each: "told", "rests
/// too".
[[nodiscard]] std::string pumps_of(const studies::ControlStepTold& step);
[[nodiscard]] std::string step_note(const studies::ControlTold& control, std::size_t step);

}  // namespace forecourse::report
