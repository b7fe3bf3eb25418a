#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/lesson/numbers/number.h"
#include "forecourse/lesson/rests_on.h"

namespace forecourse::lesson {

// What the kinds of number are written with.

/// No value, and why.
[[nodiscard]] inline Picked nothing(std::string reason) { return {{}, {}, std::move(reason), {}, {}}; }

/// A value with its place in the document of a command, and why it may be empty.
[[nodiscard]] inline Picked picked(std::optional<double> value, std::vector<std::string> command, std::string pointer,
                                   std::string reason, std::string rests_on = {}) {
  return {value, {std::move(command), std::move(pointer), 1.0}, std::move(reason), std::move(rests_on), {}};
}

/// The same value with the ends of its spread, where both are known and differ.
[[nodiscard]] inline Picked between(Picked value, const Ends& ends) {
  if (value.value && ends.low < ends.high) value.range = ends;
  return value;
}

/// The first of some defaults that nobody published, of one system or of all.
[[nodiscard]] inline std::string unpublished(const std::vector<DefaultUsed>& defaults, const std::string& system = {}) {
  return first_of(rests_on(defaults, system));
}

/// The place of the first item that is meant.
template <class Item, class Is>
[[nodiscard]] std::optional<std::size_t> place_of(const std::vector<Item>& items, Is is) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (is(items[i])) return i;
  }
  return std::nullopt;
}

/// "/result/tanks/3"
[[nodiscard]] inline std::string at_place(const std::string& list, std::size_t place) {
  return list + "/" + std::to_string(place);
}

}  // namespace forecourse::lesson
