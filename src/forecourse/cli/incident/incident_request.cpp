#include "forecourse/cli/incident/incident_request.h"

#include <algorithm>
#include <atomic>
#include <functional>
#include <optional>
#include <thread>
#include <vector>

#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/studies/flow/read_flow_options.h"
#include "forecourse/studies/incident/read_incident_options.h"

namespace forecourse::cli {
namespace {

/// Hoses that an option names; empty where it is not given.
std::optional<std::vector<std::string>> named(const std::string& hoses) {
  return hoses.empty() ? std::nullopt : std::optional(studies::read_ids(hoses));
}

}  // namespace

bool read_incident_request(const IncidentArguments& a, studies::IncidentOptions& o) {
  Parsed<studies::IncidentOptions> read = studies::read_incident_options(
      {a.kind, a.id, a.at, named(a.open), a.stop_at, a.count_for, a.open_area, a.without, a.dead, a.runs, a.seed},
      studies::Asker::command);
  tell_options(read.diagnostics);
  o = std::move(read.value);
  o.today = day_of(a.on);
  return o.today.has_value() && !has_error(read.diagnostics);
}

Context incident_context(const Console& console) {
  Context context;
  context.parallel_for = [](std::size_t count, const std::function<void(std::size_t)>& piece) {
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
      for (std::size_t i = next++; i < count; i = next++) piece(i);
    };
    std::vector<std::jthread> others;
    for (unsigned t = 1; t < std::max(1U, std::thread::hardware_concurrency()); ++t) others.emplace_back(work);
    work();
  };
  if (!console.is_terminal) return context;
  context.progress = [](double share) {
    constexpr int width = 40;
    const int full = static_cast<int>(share * width);
    std::string bar(static_cast<std::size_t>(width), '.');
    for (int i = 0; i < full; ++i) bar[static_cast<std::size_t>(i)] = '#';
    print_error("\r[" + bar + "] " + std::to_string(static_cast<int>(100.0 * share)) + " %" +
                (share >= 1.0 ? "\n" : ""));
  };
  return context;
}

}  // namespace forecourse::cli
