#include "forecourse/server/http/loopback/workers.h"

#include <system_error>

namespace forecourse::server {
namespace {

constexpr std::size_t most_threads = 320;

}  // namespace

void Workers::enqueue(std::function<void()> task) {
  const std::lock_guard lock(mutex_);
  tasks_.push_back(std::move(task));
  waiting_ = tasks_.size();
  if (idle_ < tasks_.size() && threads_.size() < most_threads) {
    try {
      threads_.emplace_back([this] { work(); });
    } catch (const std::system_error&) {  // the system has no more: those there are take it in turn
    }
  }
  news_.notify_one();
}

void Workers::work() {
  std::unique_lock lock(mutex_);
  while (true) {
    ++idle_;
    news_.wait(lock, [&] { return ending_ || !tasks_.empty(); });
    --idle_;
    if (tasks_.empty()) return;
    const std::function<void()> task = std::move(tasks_.front());
    tasks_.pop_front();
    waiting_ = tasks_.size();
    lock.unlock();
    task();
    lock.lock();
  }
}

void Workers::shutdown() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
  }
  news_.notify_all();
  for (std::thread& thread : threads_) thread.join();
}

}  // namespace forecourse::server
