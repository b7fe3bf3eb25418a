#include "forecourse/site/consistency/names.h"

#include <fmt/format.h>

#include <algorithm>

#include "forecourse/site/consistency/name_collector.h"
#include "forecourse/site/describing/value_words.h"
#include "forecourse/site/places.h"
#include "forecourse/site/text/read_run.h"

namespace forecourse::site {

namespace {

using Parts = std::vector<NamedPart>;

constexpr std::size_t longest_short_id = 3;

template <class T>
void add(Parts& parts, const std::vector<T>& list, const char* noun) {
  for (const T& item : list) {
    if (!item.id.empty()) parts.push_back({item.id.text, noun, item.id.where});
  }
}

Parts tanks_of(const Site& site) {
  Parts parts;
  add(parts, site.tanks, "tank");
  for (const Tank& tank : site.tanks) add(parts, tank.compartments, "compartment");
  return parts;
}

Parts hoses_of(const Site& site) {
  Parts parts;
  for (const Dispenser& dispenser : site.dispensers) add(parts, dispenser.hoses, "hose");
  return parts;
}

Parts places_of(const Site& site) {
  Parts parts;
  add(parts, site.pumps, "pump");
  add(parts, site.branches, "branch");
  for (const Dispenser& dispenser : site.dispensers) {
    for (const Inlet& inlet : dispenser.inlets) {
      const std::string id = place_name(dispenser, inlet);
      if (!id.empty()) parts.push_back({id, "inlet", inlet.id.empty() ? inlet.where : inlet.id.where});
    }
  }
  return parts;
}

void add_sensor(Parts& parts, const std::optional<Sump>& sump) {
  if (sump && sump->sensor && !sump->sensor->id.empty()) {
    parts.push_back({sump->sensor->id.text, "sensor", sump->sensor->id.where});
  }
}

Parts tripping_parts_of(const Site& site) {
  Parts parts;
  add(parts, site.emergency_stops, "emergency stop");
  add(parts, site.pumps, "pump");
  add(parts, site.dispensers, "dispenser");
  for (const Tank& tank : site.tanks) add_sensor(parts, tank.sump);
  for (const Dispenser& dispenser : site.dispensers) add_sensor(parts, dispenser.sump);
  for (const Pump& pump : site.pumps) {
    if (pump.leak_detector && !pump.leak_detector->id.empty()) {
      parts.push_back({pump.leak_detector->id.text, "leak detector", pump.leak_detector->id.where});
    }
  }
  return parts;
}

template <class T>
Parts parts_of(const std::vector<T>& list, const char* noun) {
  Parts parts;
  add(parts, list, noun);
  return parts;
}

Parts joined(Parts a, const Parts& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

Parts incident_places_of(const Site& site) {
  Parts parts = joined(parts_of(site.dispensers, "dispenser"), places_of(site));
  for (const Parts& more : {hoses_of(site), parts_of(site.lines, "line"), tanks_of(site)}) parts = joined(parts, more);
  return parts;
}

/// What an id of this kind may name, for a list of what there is.
std::string_view noun_of(PartKind kind) {
  return kind == PartKind::place ? "pump, branch or dispenser inlet" : reference_word(kind);
}

/// One pool of ids, each of which may be given once.
void check_pool(const Parts& parts, Findings& findings) {
  std::map<std::string_view, const NamedPart*> first;
  for (const NamedPart& part : parts) {
    const auto [found, fresh] = first.emplace(part.id, &part);
    if (fresh) continue;
    const NamedPart& other = *found->second;
    const bool same = other.noun == part.noun;
    Diagnostic& d = findings.error(
        part.where,
        same ? fmt::format("{} '{}' is defined twice", part.noun, part.id)
             : fmt::format("'{}' is the id of a {} and of a {}", part.id, other.noun, part.noun),
        part.noun == "inlet" ? "give one of the inlets an id of its own" : "give one of them another id");
    relate(d, other.where, "first defined here");
  }
}

/// "D1" where "D1.regular" is meant: the inlets of a dispenser with this id.
std::string inlets_hint(const Site& site, const std::string& id) {
  std::vector<std::string> places;
  for (const Dispenser& dispenser : site.dispensers) {
    if (dispenser.id.text != id) continue;
    for (const Inlet& inlet : dispenser.inlets) places.push_back(place_name(dispenser, inlet));
  }
  if (places.empty()) return {};
  return fmt::format("a line goes to an inlet of a dispenser: {}", fmt::join(places, ", "));
}

std::string hint_for(const Site& site, const Mention& mention, const Parts& known) {
  if (mention.kind == PartKind::place) {
    std::string hint = inlets_hint(site, mention.name.text);
    if (!hint.empty()) return hint;
  }
  std::vector<std::string_view> ids;
  for (const NamedPart& part : known) {
    if (std::find(ids.begin(), ids.end(), part.id) == ids.end()) ids.push_back(part.id);
  }
  if (ids.empty()) return fmt::format("no {} is described in this file", noun_of(mention.kind));
  // Short ids are all near each other, so none of them is a good guess.
  if (mention.name.text.size() <= longest_short_id) return list_of(ids, "there are");
  return offer(mention.name.text, ids, "there are");
}

}  // namespace

std::map<PartKind, std::vector<NamedPart>> named_parts(const Site& site) {
  return {{PartKind::product, parts_of(site.products, "product")},
          {PartKind::tank, tanks_of(site)},
          {PartKind::pump, parts_of(site.pumps, "pump")},
          {PartKind::hose, hoses_of(site)},
          {PartKind::place, places_of(site)},
          {PartKind::pump_or_dispenser, joined(parts_of(site.pumps, "pump"), parts_of(site.dispensers, "dispenser"))},
          {PartKind::tripping_part, tripping_parts_of(site)},
          {PartKind::incident_place, incident_places_of(site)},
          {PartKind::delivery, parts_of(site.deliveries, "delivery")}};
}

void check_ids(const Site& site, Findings& findings) {
  check_pool(parts_of(site.products, "product"), findings);
  check_pool(tanks_of(site), findings);
  check_pool(joined(places_of(site), parts_of(site.dispensers, "dispenser")), findings);
  check_pool(parts_of(site.lines, "line"), findings);
  check_pool(hoses_of(site), findings);
  check_pool(parts_of(site.controls, "control"), findings);
  check_pool(parts_of(site.emergency_stops, "emergency stop"), findings);
  check_pool(parts_of(site.interlocks, "interlock"), findings);
  check_pool(parts_of(site.extinguishers, "extinguisher"), findings);
  check_pool(parts_of(site.deliveries, "delivery"), findings);
  check_pool(parts_of(site.incidents, "incident"), findings);
}

void check_names(const Site& site, Findings& findings) {
  const auto parts = named_parts(site);
  Site copy = site;  // descriptions take what they describe by reference, to fill it
  NameCollector collector;
  fields(collector, copy);
  for (const Mention& mention : collector.mentions()) {
    const Parts& known = parts.at(mention.kind);
    const auto is_meant = [&](const NamedPart& part) { return part.id == mention.name.text; };
    if (std::any_of(known.begin(), known.end(), is_meant)) continue;
    findings.error(mention.name.where,
                   fmt::format("{} is '{}', but there is no such {}", mention.key, shortened(mention.name.text),
                               noun_of(mention.kind)),
                   hint_for(site, mention, known));
  }
}

}  // namespace forecourse::site
