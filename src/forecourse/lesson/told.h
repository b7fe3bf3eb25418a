#pragma once

#include <optional>
#include <string>
#include <vector>

namespace forecourse::lesson {

/// What a value is, which fixes how it is shown. All values are SI.
enum class Quantity {
  flow,                    ///< [m3/s]
  leak,                    ///< [m3/s] a small one
  volume,                  ///< [m3]
  pressure,                ///< [Pa] gauge, or a difference
  ullage_pressure,         ///< [Pa] gauge, of vapor
  length,                  ///< [m]
  bore,                    ///< [m]
  velocity,                ///< [m/s]
  time,                    ///< [s]
  temperature,             ///< [K]
  temperature_difference,  ///< [K]
  force,                   ///< [N]
  angle,                   ///< [rad]
  heat,                    ///< [W]
  mass,                    ///< [kg]
  share,                   ///< [1] shown in percent
  count,                   ///< [1] a whole number
  money,                   ///< [1] in the currency entered
};

/// Its SI unit: "m3/s"; of a share and a count "1".
[[nodiscard]] const char* unit(Quantity quantity);
/// "flow", "ullage-pressure".
[[nodiscard]] const char* word(Quantity quantity);

/// Where the command line prints a value: the words of the command behind `forecourse`, the site to be put after the
/// first of them, and the place in its JSON document (RFC 6901).
struct Proof {
  std::vector<std::string> command;  ///< {"flow", "--open", "D1.a"}
  std::string pointer;               ///< "/result/hoses/0/alone/flow_m3_per_s"
  double times = 1.0;                ///< what is printed there goes into the value so often [SI]
};

/// How far a value may lie to either side [SI], and where the same document prints it.
struct Ends {
  double low = 0.0;
  double high = 0.0;
  std::string low_pointer = {};  ///< empty: the end is worked out from one that is printed
  std::string high_pointer = {};
};

/// A value of the station as a page shows it.
struct Number {
  std::string number;           ///< id of its kind: "hose-flow-alone"
  std::string label;            ///< "Regular at D1.a, alone"
  std::optional<double> value;  ///< [SI]; empty: not determined
  Quantity quantity = Quantity::flow;
  std::optional<Ends> range;  ///< shown in place of the value; beside `likely` in the document, as `low` and `high`
  std::string reason;         ///< why it is empty, and what to enter
  std::string rests_on;       ///< an unpublished default that it rests on; empty: none
  Proof proof;
};

}  // namespace forecourse::lesson
