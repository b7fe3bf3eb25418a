#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/report/json_document.h"
#include "forecourse/server/http/reply.h"

namespace forecourse::server {

/// A request as a route sees it.
struct Call {
  std::string tail;                ///< what stands behind the path of the route: "7" of "/api/runs/7"
  report::Json body;               ///< of a POST; null: none
  std::function<bool()> given_up;  ///< true: nobody waits for the answer any more
};

/// One thing the server can be asked for.
struct Route {
  enum class Access { open, keyed };  ///< keyed: what writes or outlasts its answer; only with the key of this start
  const char* method;
  std::string_view path;  ///< one that ends in a slash has a tail
  Access access;
  std::function<Reply(const Call&)> handler;
};

/// Which route a request takes.
struct RouteFound {
  const Route* route = nullptr;  ///< null: there is none
  std::string tail;
  std::string other_methods;  ///< of routes with this path, parted by commas
};

/// \param path as sent, its escapes decoded; nothing but an equal path, or an equal beginning and a tail without
///             slashes, is taken
[[nodiscard]] RouteFound find_route(const std::vector<Route>& routes, std::string_view method, std::string_view path);

}  // namespace forecourse::server
