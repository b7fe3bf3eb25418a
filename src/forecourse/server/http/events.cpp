#include "forecourse/server/http/events.h"

namespace forecourse::server {
namespace {

constexpr std::size_t most_waiting = 100;  // events that a slow page has not been sent yet

}  // namespace

std::shared_ptr<Events::Listener> Events::join() {
  const std::lock_guard lock(mutex_);
  if (closed_ || listeners_.size() >= most_listeners) return nullptr;
  auto listener = std::make_shared<Listener>(*this);
  listeners_.insert(listener.get());
  return listener;
}

void Events::leave(Listener* listener) {
  const std::lock_guard lock(mutex_);
  listeners_.erase(listener);
}

void Events::tell(const char* name, const report::Json& data) {
  const std::string text = std::string("event: ") + name + "\ndata: " + data.dump() + "\n\n";
  const std::lock_guard lock(mutex_);
  for (Listener* listener : listeners_) {
    if (listener->waiting_.size() == most_waiting) listener->waiting_.pop_front();
    listener->waiting_.push_back(text);
  }
  news_.notify_all();
}

std::optional<std::string> Events::next(Listener& listener, std::chrono::milliseconds longest) {
  std::unique_lock lock(mutex_);
  news_.wait_for(lock, longest, [&] { return closed_ || !listener.waiting_.empty(); });
  if (listener.waiting_.empty()) return std::nullopt;
  std::string text = std::move(listener.waiting_.front());
  listener.waiting_.pop_front();
  return text;
}

void Events::close() {
  const std::lock_guard lock(mutex_);
  closed_ = true;
  news_.notify_all();
}

bool Events::closed() const {
  const std::lock_guard lock(mutex_);
  return closed_;
}

}  // namespace forecourse::server
