#pragma once

#include <string>
#include <vector>

#include "forecourse/lesson/failures/replay.h"

namespace forecourse::lesson {

/// A share of the most, within [0, 1]; 0 of nothing.
[[nodiscard]] double share_of(double value, double most);
/// The same of every value of a course.
[[nodiscard]] std::vector<double> shares_of(const std::vector<double>& course, double most);

/// The largest of a course and of what was found before; what is no number does not count.
[[nodiscard]] double most_of(const std::vector<double>& course, double most = 0.0);

/// One value of the picture that stays as it is.
void hold(Scene& scene, const std::string& name, double value);

/// One that is 0 until a moment and 1 from it on; 0 throughout where it never comes.
void step(Scene& scene, const std::string& name, const std::optional<double>& at);

/// A scene in which nothing changes for a time [s].
[[nodiscard]] Scene steady_scene(const std::string& name, bool works, double span);

/// A value as the command line takes it, to the last bit: "0.0012 m2".
[[nodiscard]] std::string exact(double value, const char* unit);

/// Where a rising course reaches a value, on a straight line between its points; held at its ends.
///
/// \pre `x` and `y` are as long as each other, and not empty
[[nodiscard]] double between(const std::vector<double>& x, const std::vector<double>& y, double at);

/// A replay that there is not, and why.
[[nodiscard]] Replay no_replay(std::string at, std::string problem);

/// A replay of a failing and a working scene; its proof is the first value that the failing one tells.
[[nodiscard]] Replay replay_of(std::string at, std::string caution, Scene fails, Scene works);

}  // namespace forecourse::lesson
