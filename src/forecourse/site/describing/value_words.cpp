#include "forecourse/site/describing/value_words.h"

#include <algorithm>

namespace forecourse::site {

namespace {

/// "a length" without its article.
std::string_view bare_noun(const QuantityKind& kind) {
  const std::string_view noun = kind.noun;
  return noun.substr(std::min(noun.find(' ') + 1, noun.size()));
}

}  // namespace

std::string describe_kind(const QuantityKind& kind, const Range& range) {
  std::string words(bare_noun(kind));
  if (range.words[0] != '\0') words += std::string(", ") + range.words;
  return words;
}

std::string kind_name(const QuantityKind& kind) {
  std::string name(bare_noun(kind));
  std::replace(name.begin(), name.end(), ' ', '_');
  return name;
}

std::string_view reference_word(PartKind kind) {
  switch (kind) {
    case PartKind::product:
      return "product";
    case PartKind::tank:
      return "tank";
    case PartKind::pump:
      return "pump";
    case PartKind::hose:
      return "hose";
    case PartKind::place:
      return "place";
    case PartKind::pump_or_dispenser:
      return "pump or dispenser";
    case PartKind::tripping_part:
      return "sensor, leak detector, emergency stop, pump or dispenser";
    case PartKind::incident_place:
      return "dispenser, inlet, hose, line or tank";
    case PartKind::delivery:
      return "delivery";
  }
  return "part";
}

}  // namespace forecourse::site
