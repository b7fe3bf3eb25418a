#pragma once

#include <type_traits>

namespace forecourse {

/// The bytes of a value as another type; `std::bit_cast`, which not every compiler's library has.
template <class To, class From>
[[nodiscard]] constexpr To bit_cast(const From& from) {
  static_assert(sizeof(To) == sizeof(From) && std::is_trivially_copyable_v<To> && std::is_trivially_copyable_v<From>);
  return __builtin_bit_cast(To, from);
}

}  // namespace forecourse
