#include "forecourse/lesson/rests_on.h"

#include <algorithm>

namespace forecourse::lesson {
namespace {

void add_once(std::string words, std::vector<std::string>& out) {
  if (std::find(out.begin(), out.end(), words) == out.end()) out.push_back(std::move(words));
}

bool is_loose(DefaultStatus status) {
  return status == DefaultStatus::illustrative || status == DefaultStatus::common_practice;
}

}  // namespace

std::vector<std::string> rests_on(const std::vector<DefaultUsed>& defaults, const std::string& system) {
  std::vector<std::string> out;
  for (const DefaultUsed& used : defaults) {
    const bool of_it = system.empty() || used.system.empty() || used.system == system;
    if (of_it && !is_firm(used)) add_once(used.what + ", " + word(used.status), out);
  }
  return out;
}

std::vector<std::string> rests_on(const std::vector<studies::InputUsed>& inputs) {
  std::vector<std::string> out;
  for (const studies::InputUsed& input : inputs) {
    if (!input.entered && is_loose(input.status)) add_once(input.what + ", " + word(input.status), out);
  }
  return out;
}

std::vector<std::string> rests_on(const studies::IncidentResult& result) {
  std::vector<std::string> out = rests_on(result.defaults);
  for (std::string& words : rests_on(result.inputs)) add_once(std::move(words), out);
  return out;
}

std::string first_of(const std::vector<std::string>& words) { return words.empty() ? std::string() : words.front(); }

}  // namespace forecourse::lesson
