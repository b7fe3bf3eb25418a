#include "forecourse/lesson/numbers/number.h"

#include <algorithm>

#include "forecourse/lesson/numbers/kinds/kinds.h"

namespace forecourse::lesson {

const std::vector<NumberKind>& number_kinds() {
  static const std::vector<NumberKind> all = [] {
    std::vector<NumberKind> out;
    for (const std::vector<NumberKind>& some :
         {delivery_numbers(), tank_numbers(), pump_numbers(), line_numbers(), sump_numbers(), shear_valve_numbers(),
          hose_numbers(), vapor_numbers(), safety_numbers()}) {
      out.insert(out.end(), some.begin(), some.end());
    }
    return out;
  }();
  return all;
}

const NumberKind* find_number(std::string_view id) {
  const std::vector<NumberKind>& all = number_kinds();
  const auto found = std::find_if(all.begin(), all.end(), [&](const NumberKind& kind) { return kind.id == id; });
  return found == all.end() ? nullptr : &*found;
}

Number number_of(const NumberKind& kind, const From& from) {
  Picked picked = kind.pick(from);
  Number out{std::string(kind.id), std::string(kind.label), picked.value, kind.quantity, picked.range, {}, {}, {}};
  if (!picked.value) out.reason = picked.reason.empty() ? "not determined here" : std::move(picked.reason);
  out.rests_on = std::move(picked.rests_on);
  out.proof = std::move(picked.proof);
  return out;
}

}  // namespace forecourse::lesson
