#pragma once

#include <optional>
#include <string>

#include "forecourse/lesson/numbers/number.h"

namespace forecourse::lesson {

// Places in the flow study. Each gives the value's place below "/result" and the system it is of.

/// A result of the flow study with where it stands.
template <class Told>
struct InFlow {
  const Told* told = nullptr;
  std::string pointer;  ///< "/result/states/0/systems/1/pumps/0"
  std::string system;
};

/// A hose in the first state in which it is open; else where it is shut.
[[nodiscard]] std::optional<InFlow<studies::HoseFlow>> hose_in_flow(const Ground& ground, const std::string& hose);
[[nodiscard]] std::optional<InFlow<studies::HoseSummary>> hose_summary(const Ground& ground, const std::string& hose);
/// A pump, a line and a place in the first state.
[[nodiscard]] std::optional<InFlow<studies::PumpDuty>> pump_in_flow(const Ground& ground, const std::string& pump);
[[nodiscard]] std::optional<InFlow<studies::LineFlow>> line_in_flow(const Ground& ground, const std::string& line);
[[nodiscard]] std::optional<InFlow<studies::PlacePressure>> place_in_flow(const Ground& ground,
                                                                          const std::string& place);
/// A place with every hose shut, and the whole of the system that a line or a place is of.
[[nodiscard]] std::optional<InFlow<studies::RestPlace>> place_at_rest(const Ground& ground, const std::string& place);
[[nodiscard]] std::optional<InFlow<studies::LineAtRest>> system_at_rest(const Ground& ground,
                                                                        const std::string& system);
/// The system that has a line; empty: none.
[[nodiscard]] std::string system_of_line(const Ground& ground, const std::string& line);

/// Why the system is not determined, or what else is told of it.
[[nodiscard]] std::string why_no_flow(const Ground& ground, const std::string& system);

/// A value of the flow study, with the unpublished default of its system.
[[nodiscard]] Picked picked_flow(const Ground& ground, std::optional<double> value, const std::string& pointer,
                                 const std::string& system, std::string reason);

}  // namespace forecourse::lesson
