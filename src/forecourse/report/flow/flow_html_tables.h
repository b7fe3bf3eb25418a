#pragma once

#include <string>

#include "forecourse/report/flow/flow_view.h"

namespace forecourse::report {

/// Pieces of the flow report, as HTML.

/// "Density 740.0 kg/m³, viscosity 0.50 mPa·s at 15.6 °C. 6 hoses, 1 pump." What is not known is left out.
[[nodiscard]] std::string fluid_in_words(const studies::SystemSummary& system, site::Display display);

/// The hoses of one product in the three states every station is asked about.
[[nodiscard]] std::string hose_table(const HoseGroup& group, site::Display display);

/// The same drawn, with the cap and the flow to keep.
[[nodiscard]] std::string hose_figure(const studies::FlowResult& result, const HoseGroup& group, site::Display display,
                                      const std::string& id);

/// Slowest hose, fastest hose, flow in total, and what the pumps add.
[[nodiscard]] std::string state_readings(const studies::SystemFlow& system, site::Display display);

/// Hoses, pumps, lines and places of one product in one state.
[[nodiscard]] std::string state_tables(const studies::SystemFlow& system, site::Display display);

}  // namespace forecourse::report
