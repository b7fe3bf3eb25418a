#pragma once

#include <functional>
#include <vector>

namespace forecourse::parts {

/// Tanks joined by bars through which they find one level.
struct JoinedTanks {
  struct Tank {
    std::function<double(double)> surface_of;  ///< elevation [m] of the surface of a volume [m3]
    double draw = 0.0;                         ///< [m3/s] taken out by a pump
  };
  struct Bar {
    std::size_t from = 0;
    std::size_t to = 0;
    std::function<double(double)> flow_of;  ///< [m3/s] at a difference of surfaces [m], odd and rising
  };
  std::vector<Tank> tanks;
  std::vector<Bar> bars;
};

/// A moment of joined tanks.
struct JoinedMoment {
  double time = 0.0;             ///< [s]
  std::vector<double> volumes;   ///< [m3]
  std::vector<double> surfaces;  ///< elevations [m]
};

/// Course of joined tanks over a time, at even moments.
/// \param tanks   [m], [m3/s]
/// \param volumes at the beginning [m3]
/// \param end     [s]
/// \param moments how many after the first [1]
/// \param stop    asked after each moment whether what follows is not wanted [1]; empty: never
/// \return the moments, the beginning first [s], [m3], [m]
/// \error 1e-6 of what moves, by steps of a pair of rules of second and third order
/// \source closed form: what leaves one tank enters the other
[[nodiscard]] std::vector<JoinedMoment> joined_course(const JoinedTanks& tanks, std::vector<double> volumes, double end,
                                                      int moments,
                                                      const std::function<bool(const JoinedMoment&)>& stop = {});

/// Flow through each bar at a moment.
/// \param tanks  [m], [m3/s]
/// \param moment [m]
/// \return [m3/s], from `from` to `to`
/// \error that of the bars' laws
/// \source closed form
[[nodiscard]] std::vector<double> bar_flows(const JoinedTanks& tanks, const JoinedMoment& moment);

}  // namespace forecourse::parts
