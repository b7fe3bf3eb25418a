#pragma once

#include <set>
#include <string>
#include <vector>

#include "forecourse/base/api_units.h"
#include "forecourse/studies/incident/release/release_case.h"
#include "forecourse/studies/incident/setup/groundwork.h"
#include "forecourse/studies/incident/setup/inputs.h"

namespace forecourse::studies {

/// What an incident is made of besides its ground.
struct Scene {
  const site::Site& site;
  const IncidentOptions& options;
  const site::IncidentRequest& request;
  const Groundwork& ground;
};

/// How the ends of a run are broken.
enum class Breakage {
  at_groove,    ///< the dispenser is off, the riser stands
  torn_in_sump  ///< the riser is torn off at the line: its valve is of no use
};

/// What runs through a pump that stands, out of a tank that stands higher. Where its loss then is not entered, both are
/// possible.
enum class Standing {
  open,  ///< its own loss if that is entered, else no loss: the most
  shut   ///< it lets nothing through
};

/// The numbers of one run: what is there acts, less what is missing.
[[nodiscard]] release::Case make_case(const Scene& scene, Inputs& inputs, const std::set<Barrier>& missing,
                                      Breakage breakage = Breakage::at_groove, Standing standing = Standing::open);

/// Leak law of a crack: from two readings, or from one and an exponent, drawn between a hole and a slit where none is
/// known. Empty if there is no reading.
struct CrackLaw {
  double coefficient = 0.0;  ///< [m3/(s Pa^n)]
  double exponent = 0.5;     ///< [1]
};
[[nodiscard]] std::optional<CrackLaw> crack_law(const site::IncidentRequest& request, Inputs& inputs);

/// The interlock by which a sensor of a dispenser's sump stops pumps, null if none does.
[[nodiscard]] const site::Interlock* stopping_interlock(const Scene& scene);

/// The leak detector in the way of an end, null if there is none.
[[nodiscard]] const site::LeakDetector* detector_of(const Scene& scene, const EndGround& end);

/// Whether it is known within which time the detector acts on what it must see: entered, or published for its leak.
[[nodiscard]] bool acts_in_known_time(const site::LeakDetector& detector);

/// Whether the detector must see the crack's leak: the leak at the detector's pressure is at least what it detects.
[[nodiscard]] std::optional<bool> must_be_seen(const site::LeakDetector* detector, const CrackLaw& law);

/// More than this into the environment is to be reported within a day [m3].
/// \source [cfr_280, 280.53(a)(1)] 25 gallons
inline constexpr double reportable_quantity = cubic_meters_from_gallons(25.0);
/// Of a sharp opening [1].
/// \source common practice, no source
inline constexpr double usual_discharge = 0.61;
/// A leak of at least `hourly_leak` that a detector must see has been acted on by then [s].
/// \source [cfr_280, 280.44(a)] 3 gallons an hour at 10 psi within one hour
inline constexpr double detector_time = 3600.0;
inline constexpr double hourly_leak = cubic_meters_from_gallons(3.0) / 3600.0;  ///< [m3/s]; see `detector_time`

}  // namespace forecourse::studies
