#pragma once

#include <httplib.h>

#include <atomic>
#include <condition_variable>
#include <cstddef>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace forecourse::server {

/// Threads for connections: as many as are wanted at once, up to a limit; beyond it connections wait in a row.
class Workers final : public httplib::TaskQueue {
 public:
  /// \param waiting kept at the number of connections that wait for a thread
  explicit Workers(std::atomic<std::size_t>& waiting) : waiting_(waiting) {}

  void enqueue(std::function<void()> task) override;
  void shutdown() override;

 private:
  void work();

  std::atomic<std::size_t>& waiting_;
  std::mutex mutex_;
  std::condition_variable news_;
  std::deque<std::function<void()>> tasks_;
  std::vector<std::thread> threads_;
  std::size_t idle_ = 0;
  bool ending_ = false;
};

}  // namespace forecourse::server
