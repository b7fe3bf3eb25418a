#include "forecourse/server/http/runs.h"

#include <algorithm>
#include <chrono>
#include <exception>

namespace forecourse::server {
namespace {

using report::Json;

constexpr std::size_t most_kept = 20;                       // with their answers
constexpr std::chrono::milliseconds between_tellings{200};  // of progress

/// Says when progress is to be told again, so that it is not told too often.
class Throttle {
 public:
  [[nodiscard]] bool due() {
    const auto now = std::chrono::steady_clock::now();
    const std::lock_guard lock(mutex_);
    if (now < next_) return false;
    next_ = now + between_tellings;
    return true;
  }

 private:
  std::mutex mutex_;
  std::chrono::steady_clock::time_point next_;
};

}  // namespace

void Runs::go(int number, Run& run, const Work& work) {
  Throttle throttle;
  Context context;
  context.cancelled = [&run] { return run.cancelled.load(); };
  context.progress = [&](double share) {
    run.share = share;
    if (throttle.due()) told_({{"run", number}, {"share", share}, {"done", false}});
  };
  Json answer;
  try {
    answer = work(context);
  } catch (const std::exception&) {  // a mistake of ours: the run ends, the server does not
    answer = {{"error", "the run broke off by a fault of the program"}, {"hint", "report it with the site file"}};
  }
  {
    const std::lock_guard lock(mutex_);
    run.answer = std::move(answer);
    run.done = true;
    if (!run.cancelled) run.share = 1.0;
  }
  told_({{"run", number}, {"share", run.share.load()}, {"done", true}});
}

void Runs::forget_oldest() {
  for (auto run = runs_.begin(); runs_.size() > most_kept && run != runs_.end();) {
    if (!run->second->done) {
      ++run;
      continue;
    }
    run->second->thread.join();  // it has nothing left to do but to tell
    run = runs_.erase(run);
  }
}

std::optional<int> Runs::start(Work work) {
  const std::lock_guard lock(mutex_);
  const auto going = std::count_if(runs_.begin(), runs_.end(), [](const auto& run) { return !run.second->done; });
  if (going >= most_at_once) return std::nullopt;
  const int number = ++last_;
  Run& run = *(runs_[number] = std::make_unique<Run>());
  run.thread = std::thread([this, number, &run, work = std::move(work)] { go(number, run, work); });
  forget_oldest();
  return number;
}

Json Runs::state(int number) const {
  const std::lock_guard lock(mutex_);
  const auto found = runs_.find(number);
  if (found == runs_.end()) return nullptr;
  const Run& run = *found->second;
  Json json{{"share", run.share.load()}, {"done", run.done}, {"cancelled", run.cancelled.load()}};
  if (run.done) json["answer"] = run.answer;
  return json;
}

bool Runs::cancel(int number) {
  const std::lock_guard lock(mutex_);
  const auto found = runs_.find(number);
  if (found == runs_.end()) return false;
  if (!found->second->done) found->second->cancelled = true;
  return true;
}

void Runs::stop() {
  std::map<int, std::unique_ptr<Run>> ending;
  {
    const std::lock_guard lock(mutex_);
    for (auto& [number, run] : runs_) run->cancelled = true;
    ending.swap(runs_);
  }
  for (auto& [number, run] : ending) run->thread.join();
}

}  // namespace forecourse::server
