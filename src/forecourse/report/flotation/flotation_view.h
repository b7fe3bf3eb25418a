#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/buried_tank.h"
#include "forecourse/report/svg/curve_chart.h"
#include "forecourse/report/units.h"
#include "forecourse/report/word_table.h"
#include "forecourse/studies/flotation/flotation.h"

namespace forecourse::report {

/// The definition of a factor, in words that stand beside it.
struct FactorWords {
  const char* name;
  const char* definition;
};
[[nodiscard]] const std::vector<FactorWords>& factor_words();

/// The answer for one tank, in sentences, the one that matters most first.
[[nodiscard]] std::vector<std::string> flotation_answer(const studies::TankFlotation& tank, site::Display display,
                                                        Glyphs glyphs);

/// All tanks in one sentence, for a summary of several studies.
[[nodiscard]] std::string flotation_in_short(const studies::FlotationResult& result);

/// Each factor with its definition; empty and filled, at the level asked and with water at grade.
[[nodiscard]] WordTable factor_table(const studies::TankFlotation& tank, Glyphs glyphs);

/// Every entry of the balance of forces: volume, part below water, weight, and what it counts.
[[nodiscard]] WordTable balance_table(const studies::FlotationState& state, site::Display display, Glyphs glyphs);

/// The state that the balance is shown of: at the level asked, else with water at grade; null where there is none.
[[nodiscard]] const studies::FlotationState* shown_state(const studies::TankFlotation& tank);

/// "empty, water 2.0 ft below grade"
[[nodiscard]] std::string state_words(const studies::FlotationState& state, site::Display display, Glyphs glyphs);

/// What is left out and what is taken for granted, each a sentence.
[[nodiscard]] std::vector<std::string> flotation_reserves(const studies::TankFlotation& tank);

[[nodiscard]] svg::CurveChart level_chart(const studies::TankFlotation& tank, site::Display display,
                                          const std::string& id);
[[nodiscard]] svg::CurveChart fill_chart(const studies::TankFlotation& tank, site::Display display,
                                         const std::string& id);
[[nodiscard]] svg::BuriedTankDrawing tank_drawing(const studies::TankFlotation& tank, site::Display display,
                                                  const std::string& id);

}  // namespace forecourse::report
