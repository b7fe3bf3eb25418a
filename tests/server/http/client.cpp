#include "server/http/client.h"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdlib>

namespace forecourse::server {
namespace {

using std::chrono::milliseconds;

std::string small_letters(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

void read_head(const std::string& head, Response& response) {
  response.status = head.starts_with("HTTP/1.1 ") ? std::atoi(head.c_str() + 9) : 0;
  for (std::size_t at = head.find("\r\n"); at != std::string::npos && at + 2 < head.size();) {
    const std::size_t end = head.find("\r\n", at + 2);
    const std::string line = head.substr(at + 2, end == std::string::npos ? end : end - at - 2);
    const std::size_t colon = line.find(": ");
    if (colon != std::string::npos) response.headers[small_letters(line.substr(0, colon))] = line.substr(colon + 2);
    at = end;
  }
}

}  // namespace

Socket::Socket(int port) : number_(socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0)) {
  sockaddr_in address{};
  address.sin_family = AF_INET;
  address.sin_port = htons(static_cast<std::uint16_t>(port));
  address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
  if (connect(number_, reinterpret_cast<const sockaddr*>(&address), sizeof address) != 0) {
    close(number_);
    number_ = -1;
  }
}

Socket::~Socket() {
  if (number_ >= 0) close(number_);
}

bool Socket::send(std::string_view bytes) const {
  while (!bytes.empty()) {
    const ssize_t count = ::send(number_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
    if (count <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(count));
  }
  return true;
}

std::string Socket::read(milliseconds longest) const {
  pollfd asked{number_, POLLIN, 0};
  if (poll(&asked, 1, static_cast<int>(longest.count())) <= 0) return {};
  std::array<char, 65536> buffer{};
  const ssize_t count = recv(number_, buffer.data(), buffer.size(), 0);
  return {buffer.data(), static_cast<std::size_t>(std::max<ssize_t>(count, 0))};
}

std::string Socket::read_until(const std::string& text, milliseconds longest) const {
  const auto until = std::chrono::steady_clock::now() + longest;
  std::string all;
  while (all.find(text) == std::string::npos) {
    const auto left = std::chrono::duration_cast<milliseconds>(until - std::chrono::steady_clock::now());
    const std::string next = left.count() > 0 ? read(left) : std::string();
    if (next.empty()) break;
    all += next;
  }
  return all;
}

Response read_answer(const Socket& socket) {
  Response response;
  std::string all = socket.read_until("\r\n\r\n", std::chrono::seconds(20));
  const std::size_t end = all.find("\r\n\r\n");
  if (end == std::string::npos) return response;
  read_head(all.substr(0, end + 2), response);
  response.body = all.substr(end + 4);
  const std::size_t length =
      response.headers.contains("content-length") ? std::stoul(response.headers["content-length"]) : 0;
  while (response.body.size() < length) {
    const std::string next = socket.read();
    if (next.empty()) break;
    response.body += next;
  }
  return response;
}

Response answer_to(int port, const std::string& bytes) {
  const Socket socket(port);
  socket.send(bytes);  // also where the other end answers before it has taken all
  return read_answer(socket);
}

std::string request(int port, const std::string& method, const std::string& path, const std::string& headers,
                    const std::string& body) {
  const std::string length = body.empty() ? "" : "Content-Length: " + std::to_string(body.size()) + "\r\n";
  return method + " " + path + " HTTP/1.1\r\nHost: 127.0.0.1:" + std::to_string(port) + "\r\n" + headers + length +
         "\r\n" + body;
}

std::string post(int port, const std::string& path, const std::string& key, const std::string& body) {
  return request(port, "POST", path, "Content-Type: application/json\r\nX-Forecourse-Key: " + key + "\r\n", body);
}

}  // namespace forecourse::server
