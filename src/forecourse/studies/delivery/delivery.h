#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/delivery/options.h"

namespace forecourse::studies {

/// How a drop ended.
enum class DropEnd {
  emptied,    ///< all that was brought is in the tank
  stopped,    ///< the truck was shut
  held,       ///< the overfill valve is shut
  stalled,    ///< pressure in the ullage holds the liquid up
  tank_full,  ///< liquid would come out of the fill
  not_begun,
  going_on,  ///< when counting ended
};
[[nodiscard]] const char* word(DropEnd end);

/// One compartment into one tank.
struct DropTold {
  std::string compartment;
  std::string tank;
  std::string product;
  DropEnd end = DropEnd::not_begun;
  std::optional<double> begins;          ///< [s]
  std::optional<double> ends;            ///< [s] with its hose drained, where it drains
  double brought = 0.0;                  ///< [m3]
  double dropped = 0.0;                  ///< [m3] into the tank, with what drained from the hose
  double first_rate = 0.0;               ///< [m3/s] at the start, with no pressure in the ullage
  double highest_rate = 0.0;             ///< [m3/s]
  double mean_rate = 0.0;                ///< [m3/s] until the truck is empty or shut
  double left_in_truck = 0.0;            ///< [m3]
  double left_in_hose = 0.0;             ///< [m3]
  double hose_holds = 0.0;               ///< [m3] truck pipe and hose, full
  std::optional<double> hose_velocity;   ///< [m/s] highest, in the hose
  std::optional<double> hose_limit;      ///< [m/s] against static charge, once the tube's end is covered
  std::optional<double> tube_velocity;   ///< [m/s] highest in the drop tube
  std::optional<double> tube_limit;      ///< [m/s] once its end is covered
  std::optional<double> start_velocity;  ///< [m/s] highest in the drop tube until its end is covered; 0: covered before
  std::optional<double> covered_at;      ///< [s] its end is covered by two diameters
  bool takes_pressure_into_account = true;  ///< false: at a given rate
};

struct DeliveryTank {
  std::string tank;
  double capacity = 0.0;                  ///< [m3]
  double volume_before = 0.0;             ///< [m3]
  double volume_after = 0.0;              ///< [m3]
  double depth_before = 0.0;              ///< [m] at the fill, or at the low end where its place is not entered
  double depth_after = 0.0;               ///< [m]
  double room_to_90 = 0.0;                ///< [m3] before
  double room_to_95 = 0.0;                ///< [m3] before
  double room_to_95_after = 0.0;          ///< [m3]
  double for_it = 0.0;                    ///< [m3] brought for this tank
  std::optional<double> alarm_at;         ///< [s]
  std::optional<double> seconds_to_shut;  ///< [s] from the alarm until 95 % or the valve is shut, whichever first
  std::optional<double> container;        ///< [m3] that the spill container holds
  bool has_container = false;
};

/// The vapor above the liquid of one tank, or of tanks that share a vent or a vapor pipe, or in the pipe where the
/// branches of a shared vent join.
struct UllageTold {
  std::vector<std::string> tanks;  ///< none: the pipe where branches join
  std::string joint;               ///< the shared vent then
  std::vector<std::string> vents;  ///< names of its vents in the chart
  std::string problem;             ///< why its pressure is not determined; it is then counted as open to the air
  bool at_least = false;           ///< a vent valve's curve is not entered: the highest pressure is no less than told
  double highest_pressure = 0.0;   ///< [Pa] gauge
  double highest_at = 0.0;         ///< [s]
  double lowest_pressure = 0.0;    ///< [Pa] gauge
  double last_pressure = 0.0;      ///< [Pa] gauge
  std::optional<double> opens_at;  ///< [Pa] lowest setting of its vent valves
  std::optional<double> vacuum_opens_at;  ///< [Pa]
  std::optional<double> lifts_at;         ///< [s] a vent valve opens
  std::optional<double> draws_at;         ///< [s] a vent valve opens to vacuum
  double vented = 0.0;                    ///< [m3] at the atmosphere, net outward
  double drawn_in = 0.0;                  ///< [m3] at the atmosphere, of it inward where net is inward
  double returned = 0.0;                  ///< [m3] at the atmosphere, to the truck
  double passed_on = 0.0;                 ///< [m3] at the atmosphere, net, through branches
  bool has_branch = false;
  double grown = 0.0;    ///< [m3] at the atmosphere, beyond the liquid's own volume
  double stored = 0.0;   ///< [m3] at the atmosphere, change of what is in it
  bool no_vent = false;  ///< every way for vapor out of it, and what it is joined to, is shut
};

struct TruckTold {
  bool closed = false;            ///< to the ullage, by a vapor hose
  double highest_pressure = 0.0;  ///< [Pa] gauge
  double lowest_pressure = 0.0;   ///< [Pa] gauge
  double stored = 0.0;            ///< [m3] at the atmosphere, change
};

enum class DeliveryHappening {
  begins,
  covered,
  lifts,
  draws,
  truck_over,
  truck_under,
  alarm,
  ninety,
  ninety_five,
  restricts,
  closes,
  tank_full,
  truck_empty,
  truck_shut,
  hose_drained,
  hose_stays,
  stalls,
  ends,
};
[[nodiscard]] const char* word(DeliveryHappening what);

struct DeliveryEvent {
  double time = 0.0;  ///< [s]
  DeliveryHappening what = DeliveryHappening::begins;
  std::string subject;  ///< tank, vent or compartment
  std::string words;
  double rate = 0.0;                      ///< [m3/s] of all drops
  std::optional<double> depth;            ///< [m] in the tank it is about
  std::optional<double> ullage_pressure;  ///< [Pa] gauge, there
};

/// A course over the chart's times.
struct DeliveryCourse {
  std::string name;  ///< of what it is: a compartment, a tank, a vent
  std::vector<double> value;
};

/// All courses, on one time base.
struct DeliveryChart {
  std::vector<double> time;                   ///< [s]
  std::vector<DeliveryCourse> rate;           ///< [m3/s] per drop
  std::vector<DeliveryCourse> truck;          ///< [m3] left per compartment
  std::vector<DeliveryCourse> hose;           ///< [m3] in each hose
  std::vector<DeliveryCourse> volume;         ///< [m3] per tank
  std::vector<DeliveryCourse> depth;          ///< [m] per tank
  std::vector<DeliveryCourse> ullage;         ///< [Pa] gauge, per ullage that is determined
  std::vector<DeliveryCourse> riser;          ///< [Pa] gauge at grade, per ullage with a vapor return
  std::vector<DeliveryCourse> hose_pressure;  ///< [Pa] gauge midway in the vapor hose, per ullage that has one on
  std::vector<double> truck_pressure;         ///< [Pa] gauge; empty where the truck is open
  std::vector<DeliveryCourse> vent;           ///< [m3/s] at the atmosphere, outward, per vent
  std::vector<DeliveryCourse> branch;         ///< [m3/s] at the atmosphere, toward the shared vent, per branch
  std::vector<DeliveryCourse> returned;       ///< [m3/s] at the atmosphere, per ullage with a vapor hose
};

struct DeliveryMove {
  std::string from;
  std::string to;
  std::string what;     ///< "liquid" or "vapor"
  double amount = 0.0;  ///< [m3]; vapor at the atmosphere
};

/// One run of a delivery.
struct DeliveryRun {
  std::string name;
  std::string problem;          ///< it was not carried to its end, and why
  bool stalled = false;         ///< the liquid is held up by pressure
  bool under_pressure = false;  ///< it ends with vapor shut in above an inch of water, or stalls
  bool moves_all = false;       ///< all that was brought is in the tanks
  double time = 0.0;            ///< [s] to its end
  double dropped = 0.0;         ///< [m3]
  double mean_rate = 0.0;       ///< [m3/s] of all drops while any runs
  std::vector<DropTold> drops;
  std::vector<DeliveryTank> tanks;
  std::vector<UllageTold> ullages;
  TruckTold truck;
  std::vector<DeliveryEvent> events;
  std::vector<DeliveryMove> moves;
  double liquid_balance = 0.0;  ///< share of the largest amount moved that is not explained [1]
  double vapor_balance = 0.0;
  std::size_t steps = 0;
  DeliveryChart chart;
};

/// What one uncertain value does, the others at their likely figures.
struct DeliverySpan {
  std::string path;                                      ///< as `--set` takes it
  const QuantityKind* quantity = nullptr;                ///< null: a number without a unit
  double low = 0.0, high = 0.0;                          ///< SI
  double time_at_low = 0.0, time_at_high = 0.0;          ///< [s]
  double pressure_at_low = 0.0, pressure_at_high = 0.0;  ///< [Pa] highest ullage pressure
};

/// From the least to the most.
struct DeliveryRange {
  double low = 0.0;
  double high = 0.0;
};

struct DeliveryResult {
  DeliveryOptions options;  ///< as used
  std::string version;
  std::string delivery;           ///< id
  std::string problem;            ///< why nothing was computed, and what to enter; empty if it was
  SourceSpan where{};             ///< of the delivery
  std::vector<DeliveryRun> runs;  ///< the one asked for, then the cases beside it
  std::vector<DeliverySpan> spans;
  std::optional<DeliveryRange> time_range;      ///< [s] over the spans; empty: nothing is uncertain
  std::optional<DeliveryRange> pressure_range;  ///< [Pa]
  double vapor_density = 0.0;                   ///< [kg/m3]
  double vapor_viscosity = 0.0;                 ///< [Pa s]
  double vapor_growth = 1.0;                    ///< [1]
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
  std::vector<std::string> notes;  ///< what was taken for granted
};

/// A delivery by gravity: rate, time, levels, pressure of the vapor, what is left in the hose.
///
/// The liquid moves quasi-steadily; the vapor of each ullage and of a closed truck is held as an amount of gas at one
/// temperature, and integrated with the liquid. See docs/theory/delivery.md.
/// \error see docs/theory/delivery.md
/// \fails what is missing becomes the `problem`
[[nodiscard]] DeliveryResult study_delivery(const site::Site& site, const DeliveryOptions& options,
                                            const Context& context = {});

/// What does not fit an option to this station: an unknown delivery, tank or vent.
[[nodiscard]] std::vector<Diagnostic> check_options(const site::Site& site, const DeliveryOptions& options);

}  // namespace forecourse::studies
