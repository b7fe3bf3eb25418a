#pragma once

#include <chrono>
#include <map>
#include <string>
#include <string_view>

namespace forecourse::server {

/// A connection to a port of this machine, byte by byte.
class Socket {
 public:
  explicit Socket(int port);
  Socket(Socket&& other) noexcept : number_(other.number_) { other.number_ = -1; }
  Socket(const Socket&) = delete;
  Socket& operator=(const Socket&) = delete;
  Socket& operator=(Socket&&) = delete;
  ~Socket();

  /// \return false: the other end does not take it
  bool send(std::string_view bytes) const;
  /// What comes next; empty: nothing within the time, or the end.
  [[nodiscard]] std::string read(std::chrono::milliseconds longest = std::chrono::seconds(20)) const;
  /// All that comes until a text has come, or the end.
  [[nodiscard]] std::string read_until(const std::string& text, std::chrono::milliseconds longest) const;

 private:
  int number_;
};

/// What was answered; status 0: nothing that could be read.
struct Response {
  int status = 0;
  std::map<std::string, std::string> headers;  ///< names in small letters
  std::string body;
};

/// Sends bytes on a connection of their own and reads one answer.
[[nodiscard]] Response answer_to(int port, const std::string& bytes);

/// Reads one answer of a connection.
[[nodiscard]] Response read_answer(const Socket& socket);

/// A request in the words of the protocol.
///
/// \param headers lines with their ends, besides Host and Content-Length
[[nodiscard]] std::string request(int port, const std::string& method, const std::string& path,
                                  const std::string& headers = {}, const std::string& body = {});

/// A POST of JSON with a key.
[[nodiscard]] std::string post(int port, const std::string& path, const std::string& key, const std::string& body);

}  // namespace forecourse::server
