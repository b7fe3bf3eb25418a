#include "forecourse/fuel/kinds.h"

#include <array>

namespace forecourse::fuel {
namespace {

enum class Family { gasoline, diesel, other };
enum class Correction { exact, approximate, none };  // how API MPMS 11.1 serves it

struct Row {
  Kind kind;
  std::string_view name;
  Family family;
  Correction correction;
};

constexpr std::array<Row, 11> rows = {{
    {Kind::gasoline_e0, "gasoline-e0", Family::gasoline, Correction::exact},
    {Kind::gasoline_e5, "gasoline-e5", Family::gasoline, Correction::approximate},
    {Kind::gasoline_e10, "gasoline-e10", Family::gasoline, Correction::approximate},
    {Kind::gasoline_e15, "gasoline-e15", Family::gasoline, Correction::none},
    {Kind::e85, "e85", Family::other, Correction::none},
    {Kind::ethanol, "ethanol", Family::other, Correction::none},
    {Kind::diesel_b0, "diesel-b0", Family::diesel, Correction::exact},
    {Kind::diesel_b5, "diesel-b5", Family::diesel, Correction::approximate},
    {Kind::diesel_b7, "diesel-b7", Family::diesel, Correction::approximate},
    {Kind::diesel_b20, "diesel-b20", Family::diesel, Correction::approximate},
    {Kind::other, "other", Family::other, Correction::none},
}};

const Row& row(Kind kind) { return rows[static_cast<std::size_t>(kind)]; }

}  // namespace

std::string_view kind_name(Kind kind) { return row(kind).name; }

std::optional<Kind> kind_from_name(std::string_view name) {
  for (const Row& r : rows) {
    if (r.name == name) return r.kind;
  }
  return std::nullopt;
}

bool is_gasoline(Kind kind) { return row(kind).family == Family::gasoline; }

bool is_diesel(Kind kind) { return row(kind).family == Family::diesel; }

bool follows_volume_correction(Kind kind) { return row(kind).correction != Correction::none; }

bool is_approximated_blend(Kind kind) { return row(kind).correction == Correction::approximate; }

}  // namespace forecourse::fuel
