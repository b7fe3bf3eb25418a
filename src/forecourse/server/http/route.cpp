#include "forecourse/server/http/route.h"

#include <optional>

namespace forecourse::server {
namespace {

std::optional<std::string> tail_of(const Route& route, std::string_view path) {
  if (!route.path.ends_with('/')) return path == route.path ? std::optional<std::string>("") : std::nullopt;
  if (!path.starts_with(route.path)) return std::nullopt;
  const std::string_view tail = path.substr(route.path.size());
  if (tail.empty() || tail.find('/') != std::string_view::npos) return std::nullopt;
  return std::string(tail);
}

}  // namespace

RouteFound find_route(const std::vector<Route>& routes, std::string_view method, std::string_view path) {
  RouteFound found;
  for (const Route& route : routes) {
    std::optional<std::string> tail = tail_of(route, path);
    if (!tail) continue;
    if (route.method == method) return {&route, std::move(*tail), {}};
    found.other_methods += (found.other_methods.empty() ? "" : ", ") + std::string(route.method);
  }
  return found;
}

}  // namespace forecourse::server
