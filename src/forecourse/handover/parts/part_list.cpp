#include "forecourse/handover/parts/part_list.h"

#include <algorithm>

namespace forecourse::handover {

std::string item(const char* list, const std::string& name, std::size_t index) {
  return std::string(list) + "." + (name.empty() ? std::to_string(index + 1) : name);
}

Place within(const Place& at, const std::string& key) {
  Place out = at;
  out.path += "." + key;
  return out;
}

void add_product(std::vector<std::string>& products, const std::string& id) {
  if (id.empty() || std::find(products.begin(), products.end(), id) != products.end()) return;
  products.push_back(id);
}

StationPart& PartList::add(Stop stop, const char* kind, const Place& at, const std::string& key, SourceSpan where,
                           PartData data) {
  StationPart part;
  part.kind = kind;
  part.path = key.empty() ? at.path : at.path + "." + key;
  part.subject = at.subject;
  part.stop = stop;
  part.where = where;
  part.owner = at.owner;
  part.products = at.products;
  part.places = at.places;
  part.of_tanker = at.of_tanker;
  part.inlet = at.inlet;
  part.hose = at.hose;
  part.data = data;
  return parts_.emplace_back(std::move(part));
}

void PartList::add_pipe(Stop stop, const char* kind, const Place& at, const char* key,
                        const std::optional<site::Pipe>& pipe) {
  if (!pipe) return;
  add(stop, kind, at, key, pipe->where, &*pipe);
  add_fittings(stop, within(at, key), *pipe);
}

void PartList::add_fittings(Stop stop, const Place& at, const site::Pipe& pipe) {
  if (pipe.loss) add(stop, "fittings", at, "loss", pipe.loss->where, &pipe).count.reset();
}

void PartList::add_seals(Stop stop, const Place& at, const std::vector<site::EntrySeal>& seals) {
  for (const site::EntrySeal& seal : seals) add(stop, "entry-seal", at, item("seal", seals, seal), seal.where, &seal);
}

void PartList::add_sump(const char* kind, const Place& at, const site::Sump& sump) {
  const Place inside = within(at, "sump");
  add(Stop::sump, kind, inside, "", sump.where, &sump);
  if (sump.sensor) {
    add(Stop::sump, "sump-sensor", inside, "sensor", sump.sensor->where, &*sump.sensor);
  } else if (sump.sensor_height) {
    add(Stop::sump, "sump-sensor", inside, "sensor_height", sump.sensor_height->where, &sump);
  }
  add_seals(Stop::sump, inside, sump.seals);
  // The lowest of some; how many there are is not told.
  if (sump.seals.empty() && sump.lowest_seal)
    add(Stop::sump, "entry-seal", inside, "lowest_seal", sump.lowest_seal->where, &sump).count.reset();
}

std::vector<StationPart> PartList::in_course_order() && {
  std::stable_sort(parts_.begin(), parts_.end(),
                   [](const StationPart& a, const StationPart& b) { return a.stop < b.stop; });
  return std::move(parts_);
}

}  // namespace forecourse::handover
