#include "forecourse/lesson/failures/failure_asked.h"

#include <algorithm>
#include <span>

#include "forecourse/base/nearest_word.h"
#include "forecourse/site/places.h"

namespace forecourse::lesson {

Parsed<const FailureKind*> asked_failure(const std::string& id) {
  Parsed<const FailureKind*> out;
  out.value = find_failure(id);
  if (out.value != nullptr) return out;
  std::vector<std::string> known;
  std::string all;
  for (const FailureKind& kind : failure_kinds()) {
    known.emplace_back(kind.id);
    all += (all.empty() ? "" : ", ") + known.back();
  }
  const auto near = nearest_word(id, std::span<const std::string>(known));
  out.diagnostics.push_back({Severity::error,
                             "there is no failure '" + id + "'",
                             std::nullopt,
                             (near ? "did you mean '" + std::string(*near) + "'? " : "") + "there are: " + all,
                             {}});
  return out;
}

namespace {

template <class Parts>
void add_ids(const Parts& parts, std::vector<std::string>& ids) {
  for (const auto& part : parts) {
    if (!part.id.empty()) ids.push_back(part.id.text);
  }
}

std::vector<std::string> every_id(const site::Site& site) {
  std::vector<std::string> ids;
  add_ids(site.tanks, ids);
  add_ids(site.pumps, ids);
  add_ids(site.lines, ids);
  add_ids(site.dispensers, ids);
  add_ids(site.deliveries, ids);
  add_ids(site.emergency_stops, ids);
  add_ids(site.interlocks, ids);
  for (const site::Tank& tank : site.tanks) {
    add_ids(tank.compartments, ids);
    add_ids(tank.fills, ids);
    add_ids(tank.vents, ids);
  }
  for (const site::Dispenser& dispenser : site.dispensers) {
    add_ids(dispenser.hoses, ids);
    for (const site::Inlet& inlet : dispenser.inlets) ids.push_back(site::place_name(dispenser, inlet));
  }
  return ids;
}

}  // namespace

std::vector<Diagnostic> check_part(const site::Site& site, const std::string& at) {
  const std::vector<std::string> ids = every_id(site);
  if (at.empty() || std::find(ids.begin(), ids.end(), at) != ids.end()) return {};
  const auto near = nearest_word(at, std::span<const std::string>(ids));
  return {{Severity::error,
           "there is no part '" + at + "' at this station",
           std::nullopt,
           near ? "did you mean '" + std::string(*near) + "'?" : "give the id of a part of the site file",
           {}}};
}

}  // namespace forecourse::lesson
