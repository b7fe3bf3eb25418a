#pragma once

#include <set>
#include <string>
#include <vector>

#include "forecourse/studies/incident/overfill/overfill_setup.h"

namespace forecourse::studies::overfilling {

/// Runs a drop and tells it.
/// \param missing what does not act in it; the case is already without that
[[nodiscard]] IncidentRun tell_run(const Setup& setup, const Case& given, const std::set<Barrier>& missing, bool charts,
                                   const Context& context);

/// Fuel outside tank, truck and hose, and what of it nothing holds [m3].
struct Loss {
  double escaped = 0.0;
  double to_environment = 0.0;
};
[[nodiscard]] Loss loss_of(const Setup& setup, const Case& given);

/// What is to be said of a drop beside its figures: static charge, what tells the driver, what was taken for granted.
[[nodiscard]] std::vector<std::string> notes_of(const Setup& setup, double flow);

}  // namespace forecourse::studies::overfilling
