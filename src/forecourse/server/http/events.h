#pragma once

#include <chrono>
#include <condition_variable>
#include <cstddef>
#include <deque>
#include <memory>
#include <mutex>
#include <optional>
#include <set>
#include <string>

#include "forecourse/report/json_document.h"

namespace forecourse::server {

/// What is told to all pages that listen, as server-sent events.
class Events {
 public:
  static constexpr std::size_t most_listeners = 64;

  /// One page that listens; it leaves when this ends.
  class Listener {
   public:
    explicit Listener(Events& events) : events_(events) {}
    Listener(const Listener&) = delete;
    Listener& operator=(const Listener&) = delete;
    ~Listener() { events_.leave(this); }

    /// Waits for what is to be sent next.
    ///
    /// \return empty: nothing came
    [[nodiscard]] std::optional<std::string> next(std::chrono::milliseconds longest) {
      return events_.next(*this, longest);
    }
    [[nodiscard]] bool closed() const { return events_.closed(); }

   private:
    friend class Events;
    Events& events_;
    std::deque<std::string> waiting_;
  };

  /// A new listener; null: there are too many, or it is closed.
  [[nodiscard]] std::shared_ptr<Listener> join();

  /// Tells all. A listener that does not keep up misses the oldest.
  void tell(const char* name, const report::Json& data);

  /// Sends all listeners away, for good.
  void close();
  [[nodiscard]] bool closed() const;

 private:
  [[nodiscard]] std::optional<std::string> next(Listener& listener, std::chrono::milliseconds longest);
  void leave(Listener* listener);

  mutable std::mutex mutex_;
  std::condition_variable news_;
  std::set<Listener*> listeners_;
  bool closed_ = false;
};

}  // namespace forecourse::server
