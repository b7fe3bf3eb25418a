#include <algorithm>
#include <array>
#include <utility>

#include "forecourse/studies/incident/incident.h"

namespace forecourse::studies {
namespace {

constexpr std::array<std::pair<IncidentKind, const char*>, 7> kinds{
    {{IncidentKind::struck, "struck"},
     {IncidentKind::drive_off, "drive-off"},
     {IncidentKind::sump_fire, "sump-fire"},
     {IncidentKind::crack, "crack"},
     {IncidentKind::line_break, "line-break"},
     {IncidentKind::overfill, "overfill"},
     {IncidentKind::nozzle_left_open, "nozzle-left-open"}}};

constexpr std::array<std::pair<Barrier, const char*>, 13> barriers{{{Barrier::shear_valve, "shear-valve"},
                                                                    {Barrier::upper_poppet, "upper-poppet"},
                                                                    {Barrier::crack_trip, "crack-trip"},
                                                                    {Barrier::fusible_link, "fusible-link"},
                                                                    {Barrier::breakaway, "breakaway"},
                                                                    {Barrier::sump_sensor, "sump-sensor"},
                                                                    {Barrier::leak_detector, "leak-detector"},
                                                                    {Barrier::emergency_stop, "emergency-stop"},
                                                                    {Barrier::check_valve, "check-valve"},
                                                                    {Barrier::sump, "sump"},
                                                                    {Barrier::overfill_valve, "overfill-valve"},
                                                                    {Barrier::overfill_alarm, "overfill-alarm"},
                                                                    {Barrier::driver, "driver"}}};

template <class Table, class Key>
const char* word_of(const Table& table, Key key) {
  for (const auto& [value, word] : table) {
    if (value == key) return word;
  }
  return "";
}

}  // namespace

const char* word(IncidentKind kind) { return word_of(kinds, kind); }

std::optional<IncidentKind> incident_kind(const std::string& word) {
  for (const auto& [kind, name] : kinds) {
    if (word == name) return kind;
  }
  return std::nullopt;
}

const char* word(Barrier barrier) { return word_of(barriers, barrier); }

std::optional<Barrier> barrier(const std::string& word) {
  for (const auto& [value, name] : barriers) {
    if (word == name) return value;
  }
  return std::nullopt;
}

std::vector<std::string> barrier_words() {
  std::vector<std::string> words;
  words.reserve(barriers.size());
  for (const auto& [value, name] : barriers) words.emplace_back(name);
  return words;
}

std::vector<Barrier> barriers_of(IncidentKind kind) {
  using enum Barrier;
  switch (kind) {
    case IncidentKind::struck:
      return {shear_valve, upper_poppet, sump_sensor, sump, emergency_stop, check_valve};
    case IncidentKind::drive_off:
      return {breakaway, shear_valve, upper_poppet, sump_sensor, sump, emergency_stop, check_valve};
    case IncidentKind::sump_fire:
      return {shear_valve, fusible_link, sump_sensor, sump, emergency_stop, check_valve};
    case IncidentKind::crack:
      return {shear_valve, crack_trip, sump_sensor, sump, leak_detector, emergency_stop, check_valve};
    case IncidentKind::line_break:
      return {leak_detector, emergency_stop, check_valve};
    case IncidentKind::overfill:
      return {overfill_valve, overfill_alarm, driver};
    case IncidentKind::nozzle_left_open:
      return {emergency_stop, check_valve};
  }
  return {};
}

const char* word(Holder holder) {
  constexpr std::array<const char*, 12> words{"tank",    "line",   "dispenser",     "sump",
                                              "slab",    "ground", "air",           "interceptor",
                                              "vehicle", "tanker", "delivery hose", "spill container"};
  return words[static_cast<std::size_t>(holder)];
}

const char* word(Assurance assurance) {
  constexpr std::array<const char*, 4> words{"assured", "not assured", "not there", "not asked"};
  return words[static_cast<std::size_t>(assurance)];
}

}  // namespace forecourse::studies
