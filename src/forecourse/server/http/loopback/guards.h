#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "forecourse/server/http/reply.h"

namespace forecourse::server {

/// What a request says of itself before its body. Headers that were not sent are empty.
struct Visitor {
  std::string host;    ///< the Host header
  std::string origin;  ///< the Origin header
  bool has_origin = false;
  std::string key;
  std::string type;      ///< the Content-Type header
  std::string length;    ///< the Content-Length header
  bool chunked = false;  ///< a body of a length that is not told
};

/// Where the server stands, and the key of this start.
struct Doorway {
  int port = 0;
  std::string key;
};

/// A new key: 32 hex digits from the system's random source.
[[nodiscard]] std::string new_key();

/// Why a request is not let in; empty: it is. The server answers only to its own name, so that no foreign page
/// reaches it under another one; a page of another origin is told nothing.
[[nodiscard]] std::optional<Reply> refuse_visitor(const Visitor& visitor, const Doorway& doorway);

/// Why a request may not write; empty: it may.
[[nodiscard]] std::optional<Reply> refuse_key(const Visitor& visitor, const Doorway& doorway);

/// Why the body of a request is not read; empty: it is.
[[nodiscard]] std::optional<Reply> refuse_body(const Visitor& visitor);

}  // namespace forecourse::server
