#pragma once

#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::lesson {

// The ids of what pages are shown at, in the order of the site file; where the file describes an incident at one of
// them, or a delivery into it, that one is first: it is the one that most is known of.

[[nodiscard]] std::vector<std::string> deliveries(const site::Site& site);
[[nodiscard]] std::vector<std::string> tanks_with_fill(const site::Site& site);
[[nodiscard]] std::vector<std::string> tanks_with_overfill_valve(const site::Site& site);
[[nodiscard]] std::vector<std::string> tanks(const site::Site& site);
/// Those whose water was read come first.
[[nodiscard]] std::vector<std::string> tanks_by_water(const site::Site& site);
[[nodiscard]] std::vector<std::string> tanks_with_vapor_return(const site::Site& site);
[[nodiscard]] std::vector<std::string> tanks_with_vent(const site::Site& site);
[[nodiscard]] std::vector<std::string> tanks_with_sump(const site::Site& site);
[[nodiscard]] std::vector<std::string> pumps(const site::Site& site);
[[nodiscard]] std::vector<std::string> pumps_with_detector(const site::Site& site);
[[nodiscard]] std::vector<std::string> double_walled_lines(const site::Site& site);
[[nodiscard]] std::vector<std::string> lines(const site::Site& site);
[[nodiscard]] std::vector<std::string> dispensers_with_sump(const site::Site& site);
[[nodiscard]] std::vector<std::string> shear_valves(const site::Site& site);
[[nodiscard]] std::vector<std::string> shear_valves_cracked(const site::Site& site);
[[nodiscard]] std::vector<std::string> shear_valves_with_link(const site::Site& site);
[[nodiscard]] std::vector<std::string> hoses(const site::Site& site);
[[nodiscard]] std::vector<std::string> hoses_with_filter(const site::Site& site);
[[nodiscard]] std::vector<std::string> hoses_with_meter(const site::Site& site);
[[nodiscard]] std::vector<std::string> hoses_with_whip(const site::Site& site);
[[nodiscard]] std::vector<std::string> hoses_with_breakaway(const site::Site& site);
[[nodiscard]] std::vector<std::string> hoses_with_curb(const site::Site& site);
[[nodiscard]] std::vector<std::string> hoses_with_swivel(const site::Site& site);
[[nodiscard]] std::vector<std::string> emergency_stops(const site::Site& site);
[[nodiscard]] std::vector<std::string> interlocks(const site::Site& site);

}  // namespace forecourse::lesson
