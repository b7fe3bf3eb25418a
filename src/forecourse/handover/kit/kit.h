#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/handover/kit/part_kinds.h"
#include "forecourse/handover/parts/station_parts.h"
#include "forecourse/site/rules/rule_set.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::handover {

struct KitOptions {
  std::optional<double> waste;         ///< share of the length of pipe that is ordered on top; empty: the default
  std::optional<double> stick_length;  ///< [m] in which pipe comes; empty: sticks are not counted
};

/// One size of a part as it is entered.
struct KitSize {
  std::string name;             ///< "bore", "length", "capacity"
  std::optional<double> value;  ///< [SI]
  std::string unit;             ///< SI unit of it: "m", "m3", "m3/s", "Pa", "K", "share"; "1" of a number
  std::string text = {};        ///< where it is a word: "1-1/2 in"
  bool of_vapor = false;        ///< a pressure of vapor, which is shown in inches of water

  friend bool operator==(const KitSize&, const KitSize&) = default;
};

/// What a part must stand.
struct RatingNeeded {
  Bears bears = Bears::nothing;
  std::optional<double> pressure_gauge;  ///< [Pa] greatest that it can see
  std::optional<double> vacuum;          ///< [Pa] of vapor, below the air, without a sign
  std::string basis;                     ///< how it was come by
  std::string missing;                   ///< what to enter where it is not determined; empty: it is
};

/// A standard by what the part does, and how far its text was seen.
struct KitStandard {
  std::string standard;  ///< "UL 842"
  std::string clause;
  std::string edition;
  site::ClauseSeen seen = site::ClauseSeen::memory;
};

/// What is known of a part and the fuel that wets it.
enum class Fit { shown, not_fit, not_determined, does_not_apply };
[[nodiscard]] const char* word(Fit fit);

struct Compatibility {
  Fit fit = Fit::does_not_apply;
  std::vector<std::string> kinds;  ///< of the products: "gasoline-e10"
  bool high_blend = false;         ///< more ethanol or biodiesel than the rule lets pass without proof
  std::string missing;             ///< what to enter
};

/// Equal parts at one stop of the course.
struct KitRow {
  Stop stop = Stop::station;
  std::string kind;              ///< of the parts: "shear-valve"
  std::string what;              ///< "shear valve, double poppet"
  std::vector<KitSize> sizes;    ///< as entered; empty: none is
  std::string function;          ///< what it does, in one sentence
  RatingNeeded needed;           ///< of the part that needs most
  std::optional<double> rating;  ///< [Pa] gauge, as entered
  bool below_need = false;       ///< the rating entered is less than what is needed
  std::vector<KitStandard> standards;
  std::vector<std::string> listed_to;  ///< as entered
  Compatibility compatibility;
  std::optional<int> count;      ///< of parts, or runs of pipe; empty: the file says that there are some, not how many
  std::optional<double> length;  ///< [m] of pipe, of those runs that have one; empty: no pipe, or none has
  int runs_without_length = 0;
  bool is_pipe = false;               ///< ordered by length
  std::string not_ordered;            ///< why it is not ordered for itself: "comes with the tanker"; empty: it is
  std::vector<std::string> parts;     ///< paths
  std::vector<std::string> subjects;  ///< as findings call them, each once
};

/// Pipe of one size and construction, in all rows.
struct PipeTotal {
  std::string what;  ///< "steel pipe, Schedule 40, 1-1/2 in"
  std::vector<KitSize> sizes;
  int runs = 0;
  int runs_without_length = 0;
  double length = 0.0;        ///< [m] of the runs whose length is entered, else computed on the plan; the likely
  double length_low = 0.0;    ///< [m] where one is entered as a spread
  double length_high = 0.0;   ///< [m]
  double order_length = 0.0;  ///< [m] with waste; at least, where a run is without a length
  std::optional<int> sticks;  ///< empty: not asked for, or a run is without a length
};

/// What is ordered of one thing, at all stops.
struct OrderLine {
  std::string what;
  std::vector<KitSize> sizes;
  std::optional<int> count;       ///< empty: not how many are needed, only that some are
  std::vector<std::size_t> rows;  ///< of the schedule
};

/// A part that is worth having at hand.
struct Spare {
  std::vector<std::size_t> rows;  ///< of the schedule: parts of one kind and size, for whichever fuel
  Consequence consequence = Consequence::other;
  std::vector<std::string> hoses;     ///< that are shut until the part is replaced, of the part where they are most
  std::vector<std::string> products;  ///< of which no hose is left
  std::string worst;                  ///< the part where they are most
  std::string reason;
  int hoses_of_station = 0;
};

/// The equipment schedule of a station.
struct Kit {
  std::string version;
  KitOptions options;  ///< as used
  std::vector<OrderLine> order;
  std::vector<PipeTotal> pipes;
  std::vector<KitRow> rows;           ///< in the order of the course
  std::vector<Spare> spares;          ///< the worst consequence first
  std::vector<std::string> not_told;  ///< what the order needs and the file does not tell
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
};

/// The schedule of all parts that a site file lists.
///
/// \param flow  with its lines at rest, for the pressures; null: none is determined
[[nodiscard]] Kit make_kit(const site::Site& site, const KitOptions& options, const studies::FlowResult* flow);

}  // namespace forecourse::handover
