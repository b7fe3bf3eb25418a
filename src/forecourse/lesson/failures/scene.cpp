#include "forecourse/lesson/failures/scene.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <utility>

namespace forecourse::lesson {

double share_of(double value, double most) { return most > 0.0 ? std::clamp(value / most, 0.0, 1.0) : 0.0; }

std::vector<double> shares_of(const std::vector<double>& course, double most) {
  std::vector<double> out;
  out.reserve(course.size());
  for (const double value : course) out.push_back(share_of(value, most));
  return out;
}

double most_of(const std::vector<double>& course, double most) {
  for (const double value : course) {
    if (std::isfinite(value)) most = std::max(most, value);
  }
  return most;
}

void hold(Scene& scene, const std::string& name, double value) { scene.values[name].assign(scene.time.size(), value); }

void step(Scene& scene, const std::string& name, const std::optional<double>& at) {
  std::vector<double>& values = scene.values[name];
  values.clear();
  values.reserve(scene.time.size());
  for (const double time : scene.time) values.push_back(at && time >= *at ? 1.0 : 0.0);
}

Scene steady_scene(const std::string& name, bool works, double span) {
  Scene scene;
  scene.name = name;
  scene.works = works;
  scene.time = {0.0, span};
  return scene;
}

std::string exact(double value, const char* unit) {
  return fmt::format("{} {}", value, unit);  // the shortest text that is read as the same value
}

double between(const std::vector<double>& x, const std::vector<double>& y, double at) {
  const auto above = std::upper_bound(x.begin(), x.end(), at);
  if (above == x.begin()) return y.front();
  if (above == x.end()) return y.back();
  const auto i = static_cast<std::size_t>(std::distance(x.begin(), above));
  const double part = (at - x[i - 1]) / (x[i] - x[i - 1]);
  return y[i - 1] + part * (y[i] - y[i - 1]);
}

Replay no_replay(std::string at, std::string problem) {
  Replay out;
  out.at = std::move(at);
  out.problem = std::move(problem);
  return out;
}

Replay replay_of(std::string at, std::string caution, Scene fails, Scene works) {
  Replay out;
  out.at = std::move(at);
  out.caution = std::move(caution);
  out.proof.command = fails.command;
  if (!fails.told.empty()) out.proof.pointer = fails.told.front().pointer;
  out.scenes.push_back(std::move(fails));
  out.scenes.push_back(std::move(works));
  return out;
}

}  // namespace forecourse::lesson
