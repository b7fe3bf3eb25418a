#pragma once

#include <string>

#include "forecourse/report/svg/tank_scene.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/tank/tank.h"

namespace forecourse::report {

/// The tank cut across at its fill, or at the chart's place, and along, to one scale.
[[nodiscard]] svg::TankScene tank_scene(const studies::TankTold& tank, const site::Site& site, const std::string& id);

/// Volume against depth at the chart's place, the level chart dashed.
[[nodiscard]] svg::VolumeCurve volume_curve(const studies::TankTold& tank, site::Display display,
                                            const std::string& id);

/// Volumes of siphoned tanks while their levels find each other, the first two or three of them; no points where they
/// stand at one level already.
[[nodiscard]] svg::VolumeCurve siphon_curve(const studies::SiphonTold& siphon, site::Display display,
                                            const std::string& id);

}  // namespace forecourse::report
