#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/network/tanks/tank_inside.h"
#include "forecourse/site/site.h"

namespace forecourse::studies {

/// A point of a long section: along the horizontal from the low end, and level above the lowest inside point [m].
struct TankPoint {
  double along = 0.0;
  double level = 0.0;
};

/// What an overfill device does.
enum class OverfillDevice { shutoff, alarm, restriction };
[[nodiscard]] const char* word(OverfillDevice device);

/// One published way to set a device, computed for one tank.
struct OverfillSetting {
  std::string route;  ///< "A", "B" or "C" of 40 CFR 280.20(c)(1)(ii)
  OverfillDevice device = OverfillDevice::shutoff;
  std::string words;             ///< "no more than 95 % full"
  std::string missing;           ///< what to enter, where it is not determined
  std::string impossible;        ///< why it cannot be met here
  std::optional<double> volume;  ///< [m3] at which it must have acted
  std::optional<double> share;   ///< [1]
  std::optional<double> level;   ///< [m]
  std::optional<double> along;   ///< [m] place of the device
  std::optional<double> depth;   ///< [m] there
};

/// Where a device is set that was placed by a chart or a rule that does not fit the tank.
struct WrongSetting {
  OverfillDevice device = OverfillDevice::shutoff;
  std::string by;           ///< "level chart" or "share of the diameter"
  double share = 0.0;       ///< [1] meant
  double depth = 0.0;       ///< [m] set, at the device's place
  double volume = 0.0;      ///< [m3] at which it acts in truth
  double true_share = 0.0;  ///< [1]
  bool late = false;        ///< above the share that is meant
};

/// A device as it is set now.
struct DeviceSet {
  OverfillDevice device = OverfillDevice::shutoff;
  std::string what;                   ///< "overfill valve of fill F1 shuts"
  std::optional<double> along;        ///< [m]
  std::optional<double> depth;        ///< [m]; empty: set by share
  double volume = 0.0;                ///< [m3]
  double share = 0.0;                 ///< [1]
  std::optional<double> before_full;  ///< [s] at the rate that then flows
  std::optional<bool> wets_fitting;   ///< acts only when a fitting at the top is wet; empty: not known
  std::optional<bool> heard;          ///< of an alarm: at the fill
  SourceSpan where{};
};

struct OverfillRoutes {
  std::vector<OverfillSetting> settings;
  std::vector<WrongSetting> wrong;
  std::vector<DeviceSet> set;
  std::vector<std::string> remarks;     ///< on what is set but not determined
  std::optional<double> fitting_level;  ///< [m] at which the first fitting at the top is wetted
  std::string fitting;                  ///< which
  bool has_fill = false;
};

/// What the routes ask for in one tank, what is set, and what a level chart would set.
///
/// \param level_chart the tank taken as level; empty: it is level, or known by its dip chart alone
[[nodiscard]] OverfillRoutes overfill_routes(const site::Site& site, const site::Tank& tank,
                                             const network::TankInside& inside,
                                             const std::optional<parts::TankVolume>& level_chart,
                                             const std::optional<double>& rate);

}  // namespace forecourse::studies
