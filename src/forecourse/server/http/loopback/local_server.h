#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "forecourse/server/http/assets.h"
#include "forecourse/server/http/events.h"
#include "forecourse/server/http/loopback/guards.h"
#include "forecourse/server/http/route.h"

namespace forecourse::server {

/// Serves routes, events and a page to this machine and nobody else. Requests that stall are cut, idle connections give
/// way to waiting ones, and no number of them keeps the others from being answered.
class LocalServer {
 public:
  LocalServer(std::vector<Route> routes, Assets assets, Events& events);
  LocalServer(const LocalServer&) = delete;
  LocalServer& operator=(const LocalServer&) = delete;
  ~LocalServer();

  /// Takes a port of 127.0.0.1.
  ///
  /// \param port 0: any that is free
  /// \return false: it is taken
  [[nodiscard]] bool bind(int port);

  [[nodiscard]] const Doorway& doorway() const { return doorway_; }

  /// Serves until `stop`.
  void serve();

  /// Waits until `serve`, in another thread, has begun.
  void wait_until_serving() const;

  /// Ends `serve` once it has begun, from any thread.
  void stop();

 private:
  class Http;

  std::vector<Route> routes_;
  Assets assets_;
  Events& events_;
  Doorway doorway_;
  std::unique_ptr<Http> http_;
};

}  // namespace forecourse::server
