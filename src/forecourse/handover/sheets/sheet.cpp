#include "forecourse/handover/sheets/sheet.h"

#include <algorithm>

#include "forecourse/base/quantity.h"

namespace forecourse::handover {
namespace {

/// What goes with an amount.
struct About {
  Amount amount;
  const char* word;
  const char* unit;
  const QuantityKind* quantity;
};

const std::array<About, 16>& abouts() {
  static const std::array<About, 16> all{{
      {Amount::none, "none", "", nullptr},
      {Amount::flow, "flow", "m3/s", &VolumeFlow::kind()},
      {Amount::leak, "leak", "m3/s", &VolumeFlow::kind()},
      {Amount::caught, "caught", "m3", &Volume::kind()},
      {Amount::pressure, "pressure", "Pa", &GaugePressure::kind()},
      {Amount::vapor_pressure, "vapor-pressure", "Pa", &PressureDifference::kind()},
      {Amount::vapor_leak, "vapor-leak", "m3/s", &VolumeFlow::kind()},
      {Amount::depth, "depth", "m", &Length::kind()},
      {Amount::height, "height", "m", &Length::kind()},
      {Amount::volume, "volume", "m3", &Volume::kind()},
      {Amount::draw, "draw", "m3", &Volume::kind()},
      {Amount::share, "share", "share", &Ratio::kind()},
      {Amount::time, "time", "s", &Duration::kind()},
      {Amount::temperature, "temperature", "K", &Temperature::kind()},
      {Amount::resistance, "resistance", "ohm", nullptr},
      {Amount::count, "count", "", nullptr},
  }};
  return all;
}

const About& about(Amount amount) { return abouts()[static_cast<std::size_t>(amount)]; }

}  // namespace

const char* word(SheetKind kind) {
  constexpr std::array<const char*, 6> words{"commissioning",     "thirty-day",    "annual",
                                             "return-to-service", "delivery-card", "emergency-card"};
  return words[static_cast<std::size_t>(kind)];
}

std::optional<SheetKind> sheet_kind(std::string_view id) {
  const auto* found =
      std::find_if(all_sheet_kinds.begin(), all_sheet_kinds.end(), [&](SheetKind kind) { return word(kind) == id; });
  return found == all_sheet_kinds.end() ? std::nullopt : std::optional(*found);
}

std::vector<std::string> sheet_kind_words() {
  std::vector<std::string> out;
  out.reserve(all_sheet_kinds.size());
  for (const SheetKind kind : all_sheet_kinds) out.emplace_back(word(kind));
  return out;
}

const char* word(Blank blank) {
  constexpr std::array<const char*, 5> words{"none", "amount", "yes-no", "text", "signature"};
  return words[static_cast<std::size_t>(blank)];
}

const char* word(Amount amount) { return about(amount).word; }
const char* unit_of(Amount amount) { return about(amount).unit; }
const QuantityKind* quantity_of(Amount amount) { return about(amount).quantity; }

}  // namespace forecourse::handover
