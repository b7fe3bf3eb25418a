#include "forecourse/handover/drawings/part_places.h"

namespace forecourse::handover {

void PartPlaces::at(const std::string& path, Point point, const std::string& how, const std::string& within) {
  spots_[path] = Known{point, how, within.empty() ? how : within};
}

const Point* PartPlaces::find(const std::string& path) const {
  const auto found = spots_.find(path);
  if (found == spots_.end()) return nullptr;
  const Known* known = std::get_if<Known>(&found->second);
  return known == nullptr ? nullptr : &known->point;
}

void PartPlaces::place(const std::vector<StationPart>& parts, Drawing& out) const {
  for (const StationPart& part : parts) {
    std::string key = part.path;
    auto found = spots_.find(key);
    while (found == spots_.end() && key.find('.') != std::string::npos) {
      key.erase(key.rfind('.'));
      found = spots_.find(key);
    }
    if (found == spots_.end()) {
      out.not_placed.push_back({part.kind, part.path, part.subject, "the site file has no place for it"});
    } else if (const Known* known = std::get_if<Known>(&found->second)) {
      const bool own = key == part.path;
      out.marks.push_back({part.kind, part.path, part.subject, known->point, own ? known->how : known->within});
    } else if (const Unknown* unknown = std::get_if<Unknown>(&found->second)) {
      out.not_placed.push_back({part.kind, part.path, part.subject, unknown->why});
    } else {
      out.elsewhere.push_back(part.path);
    }
  }
}

}  // namespace forecourse::handover
