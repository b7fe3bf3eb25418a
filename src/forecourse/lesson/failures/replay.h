#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/lesson/told.h"
#include "forecourse/site/site.h"

namespace forecourse::lesson {

/// A quantity over the time of a scene.
struct Course {
  std::string course;  ///< "escaped"
  std::string label;   ///< "outside the piping so far"
  Quantity quantity = Quantity::volume;
  std::vector<double> values;  ///< [SI] one a time; NaN: none there
};

/// What happens at one moment of a scene.
struct SceneEvent {
  double time = 0.0;  ///< [s]
  std::string words;
};

/// A result of a scene in one value.
struct SceneValue {
  std::string label;
  std::optional<double> value;  ///< [SI]; empty: not determined; of a time: never
  Quantity quantity = Quantity::volume;
  std::string pointer;  ///< where the command of the scene prints it (RFC 6901)
};

/// One way it goes. `values` are what the picture of the page is drawn from, each in [0, 1] but where its page says
/// otherwise; all vectors are as long as `time`.
struct Scene {
  std::string name;                  ///< "without shear valve"
  bool works = false;                ///< the part does what it is there for
  std::vector<std::string> command;  ///< that prints what is told, as of a proof
  std::vector<double> time;          ///< [s]
  std::map<std::string, std::vector<double>> values;
  std::vector<Course> courses;
  std::vector<SceneEvent> events;
  std::vector<SceneValue> told;
  std::vector<std::string> rests_on;  ///< what nobody entered and no source gives: "..., illustrative"
};

/// A failure of this station, computed: once with the part failing, once with it working.
struct Replay {
  std::string failure;
  std::string title;
  std::string at;             ///< id of the part
  std::string problem;        ///< why there is none; empty: there is
  std::string caution;        ///< shown before any number
  std::vector<Scene> scenes;  ///< failing, working; none where there is a problem
  Proof proof;                ///< the command of the failing scene, and where it prints the first value told
};

/// A kind of failure.
struct FailureKind {
  std::string_view id;     ///< "struck"
  std::string_view title;  ///< "A car carries the dispenser away"
  /// Why this station cannot have it at this part; empty: it can.
  std::string (*lacks)(const site::Site& site, const std::string& at) = nullptr;
  Replay (*run)(const site::Site& site, const std::string& at, const Context& context) = nullptr;
};

/// Every kind, in the order of the course.
[[nodiscard]] const std::vector<FailureKind>& failure_kinds();
/// Null where there is none.
[[nodiscard]] const FailureKind* find_failure(std::string_view id);

/// A failure at a part of a station, or at what it happens to first there.
[[nodiscard]] Replay run_failure(const FailureKind& kind, const site::Site& site, const std::string& at,
                                 const Context& context = {});

}  // namespace forecourse::lesson
