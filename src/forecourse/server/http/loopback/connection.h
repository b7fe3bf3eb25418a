#pragma once

#include <httplib.h>
#include <sys/types.h>

#include <array>
#include <chrono>
#include <cstddef>
#include <functional>
#include <string>
#include <utility>

namespace forecourse::server {

/// One connection, with a time limit for the whole of a request: what drips in byte by byte is cut.
class Connection final : public httplib::Stream {
 public:
  /// \param hurried asked now and then: true: others wait, so that what stalls is cut soon
  Connection(int socket, std::function<bool()> hurried) : socket_(socket), hurried_(std::move(hurried)) {}

  /// Waits for the first byte of the next request.
  ///
  /// \return false: none came in time, or the other end is gone
  [[nodiscard]] bool wait() const;

  /// A request begins: its time runs, its bytes are counted.
  void begin();
  /// Bytes of the request that were taken.
  [[nodiscard]] std::size_t taken() const { return taken_; }

  /// True if the other end has gone.
  [[nodiscard]] bool gone() const;

  /// Takes what the other end still sends, for a moment, so that it gets the answer it has not looked at yet.
  void linger();

  // As the library asks for it.
  [[nodiscard]] bool is_readable() const override;
  [[nodiscard]] bool is_writable() const override;
  ssize_t read(char* bytes, std::size_t size) override;
  ssize_t write(const char* bytes, std::size_t size) override;
  void get_remote_ip_and_port(std::string& ip, int& port) const override;
  void get_local_ip_and_port(std::string& ip, int& port) const override;
  [[nodiscard]] socket_t socket() const override { return socket_; }

 private:
  [[nodiscard]] bool comes(std::chrono::milliseconds longest, std::chrono::milliseconds when_hurried) const;
  [[nodiscard]] bool fill();

  int socket_;
  std::function<bool()> hurried_;
  std::array<char, 16384> buffer_{};
  std::size_t from_ = 0;  ///< of the buffer: bytes [from, to) are not taken yet
  std::size_t to_ = 0;
  std::size_t taken_ = 0;
  std::chrono::steady_clock::time_point until_;
};

}  // namespace forecourse::server
