#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/report/svg/spill_scene.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::report {

/// Whether the cut through island and sump shows this kind of incident.
[[nodiscard]] bool has_scene(const studies::IncidentResult& result);

/// From when on the dispenser lies [s]: struck, or turned over by a vehicle that drives off. Empty: it stands to the
/// end.
[[nodiscard]] std::optional<double> over_at(const studies::IncidentResult& result, const studies::IncidentRun& run);

/// The jet at a flow of a run: that of the full opening while the flow is near its steady one. Empty: none is told.
[[nodiscard]] std::optional<studies::JetRow> jet_at(const studies::IncidentResult& result,
                                                    const studies::IncidentRun& run, double flow);

/// The cut without moments.
[[nodiscard]] svg::SpillScene empty_scene(const studies::IncidentResult& result, const site::Site& site,
                                          const std::string& id);

/// The cut before anything has happened, for a page that moves it along any run of the result; empty where the
/// incident has no scene.
[[nodiscard]] std::string moving_scene(const studies::IncidentResult& result, const site::Site& site, double width,
                                       const std::string& id);

/// How to read it; sentences.
[[nodiscard]] std::vector<std::string> scene_remarks(const studies::IncidentResult& result, const site::Site& site,
                                                     bool with_jet);

/// What moves in the scene over the time of a run's chart.
struct SceneCourses {
  std::vector<std::optional<double>>
      sump_share;  ///< of the sump's volume to its brim [1]; empty: no sump, or not known
  std::vector<std::optional<double>> pool_radius;  ///< [m] as if round, with the likely film; empty: not told
  std::vector<std::optional<double>> jet_low;      ///< [m]; empty: no jet is told
  std::vector<std::optional<double>> jet_high;
};
[[nodiscard]] SceneCourses scene_courses(const studies::IncidentResult& result, const studies::IncidentRun& run);

}  // namespace forecourse::report
