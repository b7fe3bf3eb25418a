#include "forecourse/network/run_laws.h"

namespace forecourse::network {

RunLaws::RunLaws(const PipingSystem& system) : system_(&system), speeds_(system.runs.size(), 1.0) {
  runs_.reserve(system.runs.size());
  for (const Run& run : system.runs) runs_.push_back(gather(run));
}

void RunLaws::set_speed(int run, double speed) {
  const auto i = static_cast<std::size_t>(run);
  if (speeds_[i] == speed) return;
  speeds_[i] = speed;
  runs_[i] = gather(system_->runs[i], speed);
}

}  // namespace forecourse::network
