#pragma once

#include <condition_variable>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

#include "forecourse/server/desk/desk.h"
#include "forecourse/server/http/events.h"
#include "forecourse/server/http/loopback/local_server.h"
#include "forecourse/server/http/runs.h"
#include "forecourse/server/records/station_records.h"

namespace forecourse::server {

/// What a workbench is started with.
struct WorkbenchOptions {
  std::string site;          ///< path of the site file
  std::optional<int> port;   ///< 0: any that is free; empty: the first that is free from 8377
  std::string web;           ///< folder of the built page
  std::string records = {};  ///< folder or store of the site's records; empty: those beside the site file, if any
};

/// The desk, what serves it, and the look at the file now and then, each in threads of their own.
class Workbench {
 public:
  explicit Workbench(const WorkbenchOptions& options);
  Workbench(const Workbench&) = delete;
  Workbench& operator=(const Workbench&) = delete;
  ~Workbench() { stop(); }

  /// Opens the site file, takes the port, begins to serve.
  ///
  /// \return why not; empty: it serves
  [[nodiscard]] std::string start();

  /// Where a browser finds it, with the key.
  [[nodiscard]] std::string address() const;
  [[nodiscard]] const Doorway& doorway() const { return server_.doorway(); }

  /// Ends it: runs are cancelled, pages that listen are sent away, all threads are waited for.
  void stop();

 private:
  [[nodiscard]] bool bind();
  void watch();

  WorkbenchOptions options_;
  Events events_;
  Desk desk_;
  Runs runs_;
  StationRecords records_;
  LocalServer server_;
  std::mutex mutex_;
  std::condition_variable ended_;
  bool ending_ = false;
  std::thread serving_;
  std::thread watching_;
};

}  // namespace forecourse::server
