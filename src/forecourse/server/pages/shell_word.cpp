#include "forecourse/server/pages/shell_word.h"

#include <algorithm>
#include <cctype>
#include <string_view>

namespace forecourse::server {
namespace {

bool is_plain(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte >= 0x80U || std::isalnum(byte) != 0 || std::string_view("-_./,=:+%@").find(c) != std::string_view::npos;
}

}  // namespace

std::string shell_word(const std::string& word) {
  if (!word.empty() && std::all_of(word.begin(), word.end(), is_plain)) return word;
  std::string out = "'";
  for (const char c : word) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return out + "'";
}

}  // namespace forecourse::server
