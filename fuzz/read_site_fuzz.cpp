// Any bytes as a site file: reading answers with a station and diagnostics, and never crashes.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "forecourse/site/read.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto read = forecourse::site::read_site(text);
  for (const forecourse::Diagnostic& one : read.diagnostics) {
    if (one.where && (one.where->begin > one.where->end || one.where->end > size))
      std::abort();  // a place outside the text
  }
  return 0;
}
