#include "forecourse/store/files.h"

#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace forecourse::store {

std::optional<std::string> read_whole(const std::string& path, std::vector<Diagnostic>& diagnostics) {
  std::ifstream file(path, std::ios::binary);
  std::error_code trouble;
  if (!file || std::filesystem::is_directory(path, trouble)) {
    const char* reason = file ? "it is a folder" : std::strerror(errno);
    diagnostics.push_back({Severity::error, fmt::format("{} cannot be read: {}", path, reason), {}, {}, {}});
    return std::nullopt;
  }
  return std::string(std::istreambuf_iterator<char>(file), {});
}

}  // namespace forecourse::store
