#include "forecourse/server/answers/station/line_products.h"

#include <map>

namespace forecourse::server {
namespace {

/// The word of a key, without its quotes; empty if it is not entered.
std::string word_of(const StationPart& part, std::string_view key) {
  for (const StationField& field : part.fields) {
    if (field.key != key || !field.text || field.text->size() < 2) continue;
    return field.text->substr(1, field.text->size() - 2);
  }
  return {};
}

using Products = std::map<std::string, std::string>;  // of places, by id

Products known_products(std::vector<StationPart>& parts) {
  Products tanks;
  Products places;
  for (const StationPart& part : parts) {
    if (part.kind == "tank") tanks[part.id] = part.product;
    if (part.kind == "inlet") places[part.id] = part.product;
  }
  for (StationPart& part : parts) {
    if (part.kind == "pump") part.product = places[part.id] = tanks[word_of(part, "tank")];
  }
  for (StationPart& part : parts) {
    if (part.kind == "leak_detector") part.product = places[part.id];
  }
  return places;
}

/// True if a product went over a line to a place that had none.
bool carry(Products& places, const std::string& from, const std::string& to) {
  const std::string product = places[from];
  if (product.empty() || !places[to].empty()) return false;
  places[to] = product;
  return true;
}

}  // namespace

void tell_products(std::vector<StationPart>& parts) {
  Products places = known_products(parts);
  std::vector<std::pair<std::string, std::string>> ends;
  for (const StationPart& part : parts) {
    if (part.kind == "line") ends.emplace_back(word_of(part, "from"), word_of(part, "to"));
  }
  for (bool moved = true; moved;) {
    moved = false;
    for (const auto& [from, to] : ends) moved = carry(places, from, to) || carry(places, to, from) || moved;
  }
  for (StationPart& part : parts) {
    if (part.kind == "branch") part.product = places[part.id];
    if (part.kind == "line") part.product = places[word_of(part, "from")];
    if (part.kind == "line" && part.product.empty()) part.product = places[word_of(part, "to")];
  }
}

}  // namespace forecourse::server
