#include "forecourse/server/http/loopback/guards.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <random>

#include "forecourse/server/http/body.h"

namespace forecourse::server {
namespace {

bool is_own_name(std::string_view host, int port) {
  return host == fmt::format("127.0.0.1:{}", port) || host == fmt::format("localhost:{}", port);
}

/// Takes as long for any wrong key of the right length.
bool same_key(const std::string& a, const std::string& b) {
  unsigned different = a.size() == b.size() ? 0U : 1U;
  for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i) {
    different |= static_cast<unsigned char>(a[i]) ^ static_cast<unsigned>(static_cast<unsigned char>(b[i]));
  }
  return different == 0U;
}

bool is_json(std::string type) {
  type = type.substr(0, type.find(';'));
  while (!type.empty() && type.back() == ' ') type.pop_back();
  std::transform(type.begin(), type.end(), type.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return type == "application/json";
}

}  // namespace

std::string new_key() {
  std::random_device random;
  std::string key;
  for (int word = 0; word < 4; ++word) key += fmt::format("{:08x}", random());
  return key;
}

std::optional<Reply> refuse_visitor(const Visitor& visitor, const Doorway& doorway) {
  const std::string own = fmt::format("http://127.0.0.1:{}/", doorway.port);
  if (!is_own_name(visitor.host, doorway.port)) {
    return refusal(403, "this server does not answer to that host name", "open " + own);
  }
  constexpr std::string_view scheme = "http://";
  const std::string_view origin = visitor.origin;
  if (visitor.has_origin && !(origin.starts_with(scheme) && is_own_name(origin.substr(scheme.size()), doorway.port))) {
    return refusal(403, "pages of another origin are told nothing", "open " + own);
  }
  return std::nullopt;
}

std::optional<Reply> refuse_key(const Visitor& visitor, const Doorway& doorway) {
  if (same_key(visitor.key, doorway.key)) return std::nullopt;
  return refusal(401, "the key is missing or is not the one of this start",
                 "open the address that the program printed when it started");
}

std::optional<Reply> refuse_body(const Visitor& visitor) {
  const std::string& length = visitor.length;
  const bool digits = !length.empty() &&
                      std::all_of(length.begin(), length.end(), [](unsigned char c) { return std::isdigit(c) != 0; });
  if (!is_json(visitor.type))
    return refusal(415, "the body is not said to be JSON", "send Content-Type: application/json");
  if (visitor.chunked || !digits) return refusal(411, "the length of the body is not told", "send Content-Length");
  if (length.size() > 10 || std::stoull(length) > largest_body) {
    return refusal(413, "the body is larger than 4 MiB", "send less at a time");
  }
  return std::nullopt;
}

}  // namespace forecourse::server
