#include "forecourse/server/http/loopback/connection.h"

#include <poll.h>
#include <sys/socket.h>

#include <algorithm>
#include <cerrno>

namespace forecourse::server {
namespace {

using namespace std::chrono_literals;
using std::chrono::milliseconds;

constexpr milliseconds whole_request = 10s;  // to send all of a request
constexpr milliseconds one_wait = 5s;        // for the next bytes of one, and to take the next of an answer
constexpr milliseconds longest_idle = 5s;    // between two requests
constexpr milliseconds stalled = 500ms;      // is cut where others wait
constexpr milliseconds look = 50ms;          // between two looks whether others wait
constexpr milliseconds lingering = 500ms;    // for what is still being sent after the answer

/// What a socket is ready for within a time; 0: nothing.
short ready(int socket, short events, milliseconds longest) {
  pollfd asked{socket, events, 0};
  const int count = poll(&asked, 1, static_cast<int>(std::max(longest, 0ms).count()));
  return count > 0 ? asked.revents : short{0};
}

bool has(short events, int wanted) { return (events & wanted) != 0; }

}  // namespace

bool Connection::comes(milliseconds longest, milliseconds when_hurried) const {
  for (milliseconds waited = 0ms; waited < (hurried_() ? when_hurried : longest); waited += look) {
    const short events = ready(socket_, POLLIN, look);
    if (events != 0) return has(events, POLLIN);
  }
  return false;
}

bool Connection::wait() const { return from_ < to_ || comes(longest_idle, look); }

void Connection::begin() {
  taken_ = 0;
  until_ = std::chrono::steady_clock::now() + whole_request;
}

bool Connection::gone() const {
  const short events = ready(socket_, POLLRDHUP, 0ms);
  return has(events, POLLRDHUP | POLLERR | POLLHUP | POLLNVAL);
}

bool Connection::is_readable() const { return from_ < to_ || comes(one_wait, stalled); }

bool Connection::is_writable() const { return !gone() && has(ready(socket_, POLLOUT, one_wait), POLLOUT); }

bool Connection::fill() {
  if (std::chrono::steady_clock::now() > until_ || !comes(one_wait, stalled)) return false;
  const ssize_t count = recv(socket_, buffer_.data(), buffer_.size(), 0);
  from_ = 0;
  to_ = static_cast<std::size_t>(std::max<ssize_t>(count, 0));
  return to_ > 0;
}

ssize_t Connection::read(char* bytes, std::size_t size) {
  if (from_ == to_ && !fill()) return -1;
  const std::size_t count = std::min(size, to_ - from_);
  std::copy_n(buffer_.begin() + static_cast<std::ptrdiff_t>(from_), count, bytes);
  from_ += count;
  taken_ += count;
  return static_cast<ssize_t>(count);
}

ssize_t Connection::write(const char* bytes, std::size_t size) {
  if (!has(ready(socket_, POLLOUT, one_wait), POLLOUT)) return -1;
  return send(socket_, bytes, size, MSG_NOSIGNAL | MSG_DONTWAIT);
}

void Connection::get_remote_ip_and_port(std::string& ip, int& port) const {
  ip = "127.0.0.1";  // nobody else reaches it
  port = 0;
}

void Connection::get_local_ip_and_port(std::string& ip, int& port) const { get_remote_ip_and_port(ip, port); }

void Connection::linger() {
  shutdown(socket_, SHUT_WR);
  const auto until = std::chrono::steady_clock::now() + lingering;
  while (std::chrono::steady_clock::now() < until && has(ready(socket_, POLLIN, lingering), POLLIN)) {
    if (recv(socket_, buffer_.data(), buffer_.size(), MSG_DONTWAIT) <= 0) break;
  }
}

}  // namespace forecourse::server
