#include "forecourse/server/http/workbench.h"

#include <fmt/format.h>

#include <chrono>
#include <utility>

#include "forecourse/server/http/routes.h"

namespace forecourse::server {
namespace {

constexpr int first_port = 8377;                         // any: below those that systems give out by themselves
constexpr int most_ports = 100;                          // that are tried
constexpr std::chrono::milliseconds between_looks{500};  // at the file

std::vector<Route> all_routes(Desk& desk, Runs& runs, StationRecords& records) {
  std::vector<Route> routes = site_routes(desk);
  for (std::vector<Route> more : {ask_routes(desk, records), run_routes(desk, runs, records),
                                  records_routes(desk, records), report_routes(desk), handover_routes(desk, records)}) {
    for (Route& route : more) routes.push_back(std::move(route));
  }
  return routes;
}

Assets page(const std::string& folder) {
  Assets assets = read_assets(folder);
  return assets.empty() ? plain_page() : assets;
}

}  // namespace

Workbench::Workbench(const WorkbenchOptions& options)
    : options_(options),
      desk_([this](int revision, const char* why) {
        events_.tell("station", {{"revision", revision}, {"why", why}});
      }),
      runs_([this](const report::Json& state) { events_.tell("run", state); }),
      records_(options.site, options.records),
      server_(all_routes(desk_, runs_, records_), page(options.web), events_) {}

bool Workbench::bind() {
  if (options_.port) return server_.bind(*options_.port);
  for (int port = first_port; port < first_port + most_ports; ++port) {
    if (server_.bind(port)) return true;
  }
  return false;
}

std::string Workbench::start() {
  std::string why = desk_.open_path(options_.site);
  if (!why.empty()) return options_.site + ": " + why;
  if (!bind()) return options_.port ? fmt::format("port {} is taken", *options_.port) : "no port is free";
  serving_ = std::thread([this] { server_.serve(); });
  server_.wait_until_serving();  // before that it could not be stopped
  watching_ = std::thread([this] { watch(); });
  return {};
}

std::string Workbench::address() const {
  return fmt::format("http://127.0.0.1:{}/#key={}", doorway().port, doorway().key);
}

void Workbench::watch() {
  std::unique_lock lock(mutex_);
  while (!ended_.wait_for(lock, between_looks, [this] { return ending_; })) {
    desk_.look();
    if (records_.changed(desk_.facts().path)) events_.tell("records", report::Json::object());
  }
}

void Workbench::stop() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
  }
  ended_.notify_all();
  server_.stop();
  runs_.stop();
  if (serving_.joinable()) serving_.join();
  if (watching_.joinable()) watching_.join();
}

}  // namespace forecourse::server
