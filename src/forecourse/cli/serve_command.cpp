#include <pthread.h>
#include <sys/resource.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <system_error>
#include <thread>

#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/server/http/workbench.h"

namespace forecourse::cli {
namespace {

constexpr std::chrono::milliseconds longest_end{1500};  // for what is still going when it is told to end

/// The signals that end the program; from now on they wait to be asked for, in this thread and those it starts.
sigset_t hold_ending_signals() {
  sigset_t signals;
  sigemptyset(&signals);
  for (const int each : {SIGINT, SIGTERM, SIGHUP}) sigaddset(&signals, each);
  pthread_sigmask(SIG_BLOCK, &signals, nullptr);
  std::signal(SIGPIPE, SIG_IGN);
  return signals;
}

/// Connections are files too: many of them must not keep the site file from being saved.
void allow_more_files() {
  constexpr rlim_t wanted = 16384;
  rlimit limit{};
  if (getrlimit(RLIMIT_NOFILE, &limit) != 0) return;
  limit.rlim_cur = std::max(limit.rlim_cur, std::min(wanted, limit.rlim_max));
  setrlimit(RLIMIT_NOFILE, &limit);
}

/// Ends the workbench. What does not end in time is left: what was told to be saved is on the disk.
void end(server::Workbench& workbench) {
  std::thread([] {
    std::this_thread::sleep_for(longest_end);
    std::_Exit(0);
  }).detach();
  workbench.stop();
}

}  // namespace

Exit serve_command(const ServeArguments& arguments) {
  if (!arguments.web.empty() && !std::filesystem::is_directory(arguments.web)) {
    print_error("error: --web " + arguments.web + ": there is no such folder\n");
    return Exit::bad_input;
  }
  if (!arguments.records.empty() && !std::filesystem::exists(arguments.records)) {
    print_error("error: --records " + arguments.records + ": there is no such folder or file\n");
    return Exit::bad_input;
  }
  const sigset_t signals = hold_ending_signals();
  allow_more_files();
  server::Workbench workbench({arguments.site, arguments.port,
                               arguments.web.empty() ? beside_program("web") : arguments.web, arguments.records});
  const std::string why = workbench.start();
  if (!why.empty()) {
    print_error("error: " + why + "\n");
    return Exit::bad_input;
  }
  print("workbench: " + workbench.address() + "\nCtrl+C ends it\n");
  int signal = 0;
  sigwait(&signals, &signal);
  end(workbench);
  return Exit::fine;
}

}  // namespace forecourse::cli
