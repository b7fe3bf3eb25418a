#include "forecourse/server/http/assets.h"

#include <fmt/format.h>
#include <zlib.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <system_error>
#include <utility>

namespace forecourse::server {
namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t largest_asset = std::uintmax_t{64} << 20U;  // bytes

constexpr std::array<std::pair<const char*, const char*>, 12> types{{{".html", "text/html; charset=utf-8"},
                                                                     {".js", "text/javascript; charset=utf-8"},
                                                                     {".css", "text/css; charset=utf-8"},
                                                                     {".svg", "image/svg+xml"},
                                                                     {".png", "image/png"},
                                                                     {".ico", "image/x-icon"},
                                                                     {".woff2", "font/woff2"},
                                                                     {".json", "application/json"},
                                                                     {".map", "application/json"},
                                                                     {".wasm", "application/wasm"},
                                                                     {".webmanifest", "application/manifest+json"},
                                                                     {".txt", "text/plain; charset=utf-8"}}};

std::string type_of(const fs::path& path) {
  const std::string ending = path.extension().string();
  const auto known = std::find_if(types.begin(), types.end(), [&](const auto& type) { return ending == type.first; });
  return known == types.end() ? "application/octet-stream" : known->second;
}

/// Empty where it does not get smaller.
std::string compressed(const std::string& bytes) {
  constexpr int gzip_window = 15 + 16;  // zlib's way to ask for a gzip frame
  constexpr int memory_level = 8;       // zlib's own default
  z_stream stream{};
  if (deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, gzip_window, memory_level, Z_DEFAULT_STRATEGY) != Z_OK) {
    return {};
  }
  std::string out(bytes.size(), '\0');
  stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));  // NOLINT: zlib does not write there
  stream.avail_in = static_cast<uInt>(bytes.size());
  stream.next_out = reinterpret_cast<Bytef*>(out.data());  // NOLINT
  stream.avail_out = static_cast<uInt>(out.size());
  const bool smaller = deflate(&stream, Z_FINISH) == Z_STREAM_END;
  out.resize(smaller ? stream.total_out : 0);
  deflateEnd(&stream);
  return out;
}

std::string tag_of(const std::string& bytes) {
  const uLong sum = crc32(0, reinterpret_cast<const Bytef*>(bytes.data()), static_cast<uInt>(bytes.size()));  // NOLINT
  return fmt::format("\"{:08x}-{:x}\"", sum, bytes.size());
}

Asset asset_of(std::string bytes, std::string type, bool lasting) {
  std::string gzip = compressed(bytes);
  std::string tag = tag_of(bytes);
  return {std::move(type), std::move(bytes), std::move(gzip), std::move(tag), lasting};
}

/// True for an ordinary file that lies in the folder, also by way of links.
bool is_inside(const fs::path& file, const fs::path& folder) {
  std::error_code trouble;
  const fs::path real = fs::canonical(file, trouble);
  if (trouble || !fs::is_regular_file(real, trouble) || fs::file_size(real, trouble) > largest_asset) return false;
  return std::mismatch(folder.begin(), folder.end(), real.begin(), real.end()).first == folder.end();
}

std::string bytes_of(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

}  // namespace

Assets read_assets(const std::string& folder) {
  Assets assets;
  std::error_code trouble;
  const fs::path top = fs::canonical(folder, trouble);
  if (trouble) return assets;
  for (fs::recursive_directory_iterator entry(top, trouble), end; !trouble && entry != end; entry.increment(trouble)) {
    if (!is_inside(entry->path(), top)) continue;
    const std::string path = "/" + entry->path().lexically_relative(top).generic_string();
    assets[path] = asset_of(bytes_of(entry->path()), type_of(path), path.starts_with("/assets/"));
  }
  const auto index = assets.find("/index.html");
  if (index == assets.end()) return {};
  assets["/"] = index->second;
  return assets;
}

Assets plain_page() {
  const char* const page =
      "<!doctype html><html lang=\"en\"><meta charset=\"utf-8\"><title>Workbench</title>"
      "<h1>The page of the workbench is not built</h1>"
      "<p>The server runs, but there is no folder <code>web</code> beside the program. Build it with "
      "<code>npm ci</code> and <code>npm run build</code> in the folder <code>web</code> of the source, or name a "
      "built one with <code>--web</code>.</p></html>\n";
  return {{"/", asset_of(page, "text/html; charset=utf-8", false)}};
}

}  // namespace forecourse::server
