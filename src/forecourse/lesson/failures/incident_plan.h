#pragma once

#include <string>
#include <vector>

#include "forecourse/lesson/failures/incident_side.h"
#include "forecourse/lesson/failures/spot.h"

namespace forecourse::lesson {

/// A value of the picture that the question itself fixes: a valve that is anchored in one scene and not in the other.
struct Fixed {
  const char* name = "";
  double fails = 0.0;
  double works = 0.0;
};

/// A failure as two incidents, before either is worked out.
struct IncidentPlan {
  std::string problem;  ///< why this station cannot have it there, and what to enter; empty: it may
  std::string at;       ///< id of the part
  Spot spot;            ///< the inlet or hose that it is about; of an incident along a line: none
  IncidentSide fails;
  IncidentSide works;
  std::vector<Fixed> fixed = {};
  std::optional<studies::Happening> acts = {};  ///< that the part does in the working scene; else there is none
  std::string idle = {};                        ///< what is said then
};

/// The largest values of both scenes, by which their shares are taken.
struct IncidentMost {
  double escaping = 0.0;  ///< [m3/s]
  double inflow = 0.0;    ///< [m3/s] toward the opening
};

/// What flows from the tanks toward the opening [m3/s]: all that is pumped but what hoses elsewhere take.
[[nodiscard]] std::vector<double> inflow_of(const studies::IncidentRun& run);

/// What pictures of valve, sump, pump and line are drawn from, over the chart of a run.
///
/// \param spot the inlet, for its poppets and its connection
void add_release_values(const site::Site& site, const Spot& spot, const IncidentWorked& worked,
                        const IncidentMost& most, Scene& scene);

/// The same of a vehicle that drives off: the chart begins when something gives way, the scene when the vehicle does.
void add_pull_values(const IncidentWorked& worked, const IncidentMost& most, Scene& scene);

/// Both worked out, as a replay.
[[nodiscard]] Replay replay_of(const site::Site& site, const IncidentPlan& plan, const Context& context);

/// Why there is none; empty: there is.
[[nodiscard]] std::string lacks(const site::Site& site, const IncidentPlan& plan);

}  // namespace forecourse::lesson
