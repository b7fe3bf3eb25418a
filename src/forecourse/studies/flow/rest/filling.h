#pragma once

#include <optional>
#include <vector>

#include "forecourse/network/gathered_run.h"
#include "forecourse/studies/flow/rest/course_fill.h"

namespace forecourse::studies {

/// A pump that fills an empty course: its curve against what the filled parts lose and the height of the front; air
/// goes out without loss.
class Filling {
 public:
  Filling(const network::PipingSystem& system, const FillCourse& course);

  /// Flow [m3/s] when a volume [m3] is filled; 0 where the pump does not lift the front. Quickest when asked in the
  /// order of filling: the last flow is where the next is looked for.
  [[nodiscard]] double flow(double filled);

 private:
  /// A part with a volume, and the law of all that is filled before it.
  struct Stage {
    double begin = 0.0;   ///< [m3] filled when the front comes to it
    double volume = 0.0;  ///< [m3]
    double bottom = 0.0;  ///< [Pa] weight of the column up to where it begins, from the liquid in the tank
    double climb = 0.0;   ///< [Pa] weight of the column that it adds from end to end
    double limit = 0.0;   ///< [m3/s]
    network::GatheredRun before;
    network::GatheredRun own;
  };

  [[nodiscard]] const Stage& stage_at(double filled);

  std::vector<Stage> stages_;
  std::size_t stage_ = 0;  ///< of the last question
  double last_ = 0.0;      ///< [m3/s] before the limit
};

/// Times to fill several courses one after the other; what a course shares with the one before it is computed once.
class FillTimes {
 public:
  explicit FillTimes(const network::PipingSystem& system) : system_(system) {}

  /// [s] With nothing in the way but the course; empty where the pump does not bring the front to the end.
  [[nodiscard]] std::optional<double> time(const FillCourse& course);

 private:
  const network::PipingSystem& system_;
  std::vector<CoursePart> parts_;             ///< of the last course
  std::vector<std::optional<double>> times_;  ///< [s] at the end of each that has a volume
};

}  // namespace forecourse::studies
