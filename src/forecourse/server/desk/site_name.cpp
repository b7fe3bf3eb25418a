#include "forecourse/server/desk/site_name.h"

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <string_view>
#include <system_error>

namespace forecourse::server {
namespace {

constexpr std::string_view ending = ".toml";
constexpr std::size_t longest_name = 100;  // bytes
constexpr std::size_t most_names = 1000;

bool is_plain(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte >= 0x80U || std::isalnum(byte) != 0 || std::string_view(" .-_").find(c) != std::string_view::npos;
}

}  // namespace

std::string wrong_name(const std::string& name) {
  if (!name.ends_with(ending) || name.size() == ending.size()) return "the name of a site file ends in .toml";
  if (name.size() > longest_name) return "the name is longer than 100 bytes";
  if (name.front() == '.' || name.front() == ' ') return "the name begins with a dot or a blank";
  if (!std::all_of(name.begin(), name.end(), is_plain)) {
    return "the name holds something other than letters, digits, blanks, dots, hyphens and underscores";
  }
  return {};
}

std::vector<std::string> site_names(const std::string& folder) {
  std::vector<std::string> names;
  std::error_code trouble;
  for (std::filesystem::directory_iterator entry(folder, trouble), end; !trouble && entry != end;
       entry.increment(trouble)) {
    std::error_code unknown;
    const std::string name = entry->path().filename().string();
    if (wrong_name(name).empty() && entry->is_regular_file(unknown)) names.push_back(name);
    if (names.size() == most_names) break;
  }
  std::sort(names.begin(), names.end());
  return names;
}

}  // namespace forecourse::server
