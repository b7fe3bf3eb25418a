#pragma once

#include <atomic>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

#include "forecourse/base/context.h"
#include "forecourse/report/json_document.h"

namespace forecourse::server {

/// Long studies, each in a thread of its own.
class Runs {
 public:
  static constexpr int most_at_once = 4;

  /// What a run does: its answer, told of progress and of cancelling through the context.
  using Work = std::function<report::Json(const Context& context)>;
  /// Told of progress: {"run", "share", "done"}.
  using Told = std::function<void(const report::Json&)>;

  explicit Runs(Told told) : told_(std::move(told)) {}
  Runs(const Runs&) = delete;
  Runs& operator=(const Runs&) = delete;
  ~Runs() { stop(); }

  /// Starts one.
  ///
  /// \return its number; empty: as many as may go are going
  [[nodiscard]] std::optional<int> start(Work work);

  /// {"share", "done", "cancelled"}, and "answer" when done; null: there is no such run (any more).
  [[nodiscard]] report::Json state(int number) const;

  /// Asks a run to stop.
  ///
  /// \return false: there is no such run
  bool cancel(int number);

  /// Cancels all and waits for them.
  void stop();

 private:
  struct Run {  // NOLINT(bugprone-exception-escape): destroying JSON throws nothing, though it looks so
    std::atomic<double> share = 0.0;
    std::atomic<bool> cancelled = false;
    bool done = false;
    report::Json answer;
    std::thread thread;
  };

  void go(int number, Run& run, const Work& work);
  void forget_oldest();

  mutable std::mutex mutex_;
  std::map<int, std::unique_ptr<Run>> runs_;
  int last_ = 0;
  Told told_;
};

}  // namespace forecourse::server
