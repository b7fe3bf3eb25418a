#pragma once

/// Where the steps of a return to service are published, and whether the text was read or another that repeats it.
namespace forecourse::studies::published {

inline constexpr const char* practice = "common practice, no source";

/// \source [rp1200_17, 10.1] a shear valve is inspected and tested after a hit or a drive-off
inline constexpr const char* shear_valve = "RP1200-17, 10.1: after a hit or a drive-off (text read)";
/// \source [rp1200_17, 10.2.1 and 10.2.2] the arm is tripped, and no product may flow
inline constexpr const char* trip_test = "RP1200-17, 10.2: no product may flow (text read)";
/// \source [rp1200_17, 6.5] water 4 in above the highest penetration or seam for an hour, change under 1/8 in
inline constexpr const char* sump_test =
    "40 CFR 280.33(d): within 30 days of a repair; RP1200-17, 6.5: one hour, change under 1/8 in (texts read)";
/// \source [rp1200_17, 11.1 to 11.3] each switch is tested by itself
inline constexpr const char* emergency_stop = "RP1200-17, 11: each switch by itself (text read)";
/// \source [rp1200_17, 7.1] a drop-tube valve shuts at no more than 95 %
/// \source [cfr_280, 280.33(f)] repaired overfill equipment within 30 days
inline constexpr const char* overfill_test =
    "40 CFR 280.33(f): within 30 days of a repair (text read); RP1200, 7.1: shut at no more than 95 % (2012 edition "
    "read, a summary of that of 2017 agrees)";
/// \source [rp1200_17, 7.1] alarms and restrictors act at no more than 90 %
inline constexpr const char* alarm_test =
    "40 CFR 280.33(f): within 30 days of a repair; RP1200, 7.1: at no more than 90 % (texts read)";
/// \source [rp1200_17, 6.2] spill containers; [cfr_280, 280.33(f)] within 30 days of repair
inline constexpr const char* spill_container =
    "40 CFR 280.33(f): within 30 days of a repair; RP1200-17, 6.2: one hour, drop under 1/8 in (texts read)";
/// \source [cfr_280, 280.44(b)] line tightness testing
inline constexpr const char* line_test = "40 CFR 280.44(b): 0.1 gal/h at 1.5 times operating pressure (text read)";
/// \source [cfr_280, 280.44(a), 280.40(a)(3)] line leak detectors
inline constexpr const char* detector_test =
    "40 CFR 280.44(a), 280.40(a)(3): 3 gal/h at 10 psi within an hour (text read)";
/// \source [cfr_280, 280.40(a)(3)] sensors
inline constexpr const char* sensor_test = "40 CFR 280.40(a)(3): sensors, once a year (text read)";
/// \source [cfr_280, 280.33(c)] metal that leaked is replaced
inline constexpr const char* leaking_pipe =
    "40 CFR 280.33(c): metal that leaked by corrosion or damage is replaced, other pipe repaired as its maker says "
    "(text read)";
/// \source [cfr_280, 280.20] replaced piping: the whole run is secondarily contained; [cfr_280, 280.12] from one half
/// on
inline constexpr const char* replaced_run =
    "40 CFR 280.20 (text read), 280.12 (read by way of the agency's guidance): from half of a run on";
/// \source [cfr_280, 280.33(d)] within 30 days of a repair
inline constexpr const char* interstice = "40 CFR 280.33(d): within 30 days of a repair (text read)";
/// \source [cfr_280, 280.53] spills and overfills
inline constexpr const char* spill =
    "40 CFR 280.53: more than 25 gal, or a sheen: within 24 hours (read by way of a state's text)";
/// \source [cfr_280, 280.50 and 280.52] suspected releases; [cfr_280, 280.61] confirmed ones
inline constexpr const char* release =
    "40 CFR 280.50 and 280.52: suspected, told within 24 hours, looked into within 7 days (2015 edition read); 280.61: "
    "confirmed, told within 24 hours (text read)";
/// \source [cfr_280, 280.30(a)] room before a delivery
inline constexpr const char* room_in_tank = "40 CFR 280.30(a): room for what is delivered (stored copy read)";
/// \source [vr_202, procedure 1.4] steps after a drive-off
inline constexpr const char* drive_off =
    "California order VR-202, procedure 1.4, written for hoses with vapor recovery (text read)";
/// \source [ifc_2018, 2306.7.5.1] breakaways listed, holding liquid on both sides
inline constexpr const char* breakaway =
    "2018 IFC 2306.7.5.1, as the 2020 Minnesota State Fire Code adopts it: listed, holding liquid on both sides (text "
    "read)";

}  // namespace forecourse::studies::published
