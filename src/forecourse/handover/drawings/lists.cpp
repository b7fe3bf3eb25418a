#include "forecourse/handover/drawings/lists.h"

#include <algorithm>
#include <map>

namespace forecourse::handover {
namespace {

struct Named {
  std::string name, why;
};

std::vector<std::string> by_reason(const std::vector<Named>& items, const char* between) {
  std::vector<std::string> reasons;
  std::map<std::string, std::string> names;
  for (const Named& item : items) {
    const auto [found, fresh] = names.try_emplace(item.why);
    if (fresh) reasons.push_back(item.why);
    if (!found->second.empty()) found->second += between;
    found->second += item.name;
  }
  for (std::string& reason : reasons) reason.insert(0, names[reason] + ": ");
  return reasons;
}

}  // namespace

std::vector<std::string> not_placed_in_words(const Drawing& drawing) {
  // Parts of one thing under its name, each by its kind.
  std::vector<Named> named;
  named.reserve(drawing.not_placed.size());
  std::string before;  // the thing of the last entry
  for (const NotPlaced& one : drawing.not_placed) {
    const bool same = !named.empty() && before == one.subject && named.back().why == one.why;
    if (same) {
      named.back().name.insert(named.back().name.size() - one.subject.size() - 1, ", " + one.kind);
    } else {
      named.push_back({one.kind + " " + one.subject, one.why});
    }
    before = one.subject;
  }
  return by_reason(named, "; ");
}

std::vector<std::string> zones_in_words(const Drawing& drawing) {
  std::vector<Named> named;
  named.reserve(drawing.zones.size());
  for (const Zone& zone : drawing.zones) named.push_back({zone.subject, zone.words});
  return by_reason(named, ", ");
}

std::vector<std::string> zone_gaps_in_words(const Drawing& drawing) {
  std::vector<Named> named;
  named.reserve(drawing.zone_gaps.size());
  for (const ZoneGap& gap : drawing.zone_gaps) named.push_back({gap.subject, gap.why});
  return by_reason(named, ", ");
}

}  // namespace forecourse::handover
