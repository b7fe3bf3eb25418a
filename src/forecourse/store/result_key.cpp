#include <fmt/format.h>

#include <cstdint>

#include "forecourse/store/store.h"

namespace forecourse::store {

std::string result_key(std::string_view version, std::string_view site_text, std::string_view options) {
  __extension__ using Wide = unsigned __int128;
  constexpr Wide prime = (Wide{1} << 88U) + 0x13BU;
  Wide hash = (Wide{0x6C62272E07BB0142U} << 64U) + 0x62B821756295C58DU;
  const auto add = [&](std::string_view text) {
    for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * prime;
    hash = (hash ^ 0x100U) * prime;  // no byte: what ends one text does not begin the next
  };
  for (const std::string_view text : {version, site_text, options}) add(text);
  return fmt::format("{:016x}{:016x}", static_cast<std::uint64_t>(hash >> 64U), static_cast<std::uint64_t>(hash));
}

}  // namespace forecourse::store
