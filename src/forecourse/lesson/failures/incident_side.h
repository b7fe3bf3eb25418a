#pragma once

#include <string>
#include <vector>

#include "forecourse/lesson/failures/replay.h"
#include "forecourse/studies/incident/incident.h"
#include "forecourse/studies/incident/read_incident_options.h"

namespace forecourse::lesson {

/// An incident as it goes in one scene: what the command `incident` is asked.
struct IncidentSide {
  std::string name;  ///< of the scene
  studies::IncidentTexts texts;
  std::string run = {};                  ///< how the name of the run begins that is shown; empty: the first
  std::vector<std::string> sets = {};    ///< values changed in the site it is worked out of, as typed behind `--set`
  std::vector<std::string> chosen = {};  ///< figures of it that neither the file nor a source gives, in words
};

[[nodiscard]] IncidentSide incident_side(std::string name, const char* kind, const std::string& at,
                                         std::vector<std::string> without = {});

/// One worked out.
struct IncidentWorked {
  std::string problem;  ///< why there is none, and what to enter
  studies::IncidentResult result;
  std::size_t run = 0;  ///< that is shown
  std::vector<std::string> command;

  [[nodiscard]] const studies::IncidentRun& shown() const { return result.runs[run]; }
};

/// Works it out, without the cases beside it and without ranges.
///
/// \param charts without them it is quicker, and tells only whether it can be worked out
[[nodiscard]] IncidentWorked work_out(const site::Site& site, const IncidentSide& side, bool charts,
                                      const Context& context = {});

/// When something first happens in a run [s].
[[nodiscard]] std::optional<double> first_time(const studies::IncidentRun& run, studies::Happening what);
/// When it last does.
[[nodiscard]] std::optional<double> last_time(const studies::IncidentRun& run, studies::Happening what);

/// What lies in one of the holders over the chart of a run; empty: the run has none such.
[[nodiscard]] std::vector<double> held_in(const studies::IncidentRun& run, studies::Holder holder);

/// What has escaped so far over the chart of a run [m3]: all that is held outside tanks, pipes, hoses and vehicles.
[[nodiscard]] std::vector<double> escaped_so_far(const studies::IncidentRun& run);

/// A scene with the times, events, courses and told values of a run.
[[nodiscard]] Scene told_scene(const IncidentSide& side, const IncidentWorked& worked, bool works);

}  // namespace forecourse::lesson
