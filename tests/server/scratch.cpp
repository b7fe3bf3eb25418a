#include "server/scratch.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

namespace forecourse::server {

namespace fs = std::filesystem;

std::string scratch_folder(const std::string& name) {
  const fs::path folder = fs::path(testing::TempDir()) / ("forecourse-" + name + "-" + std::to_string(getpid()));
  fs::remove_all(folder);
  fs::create_directories(folder);
  return fs::canonical(folder).string();
}

std::string file_text(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

void write_outside(const std::string& path, const std::string& text) {
  std::ofstream file(path, std::ios::binary | std::ios::trunc);
  file << text;
}

std::string copy_of_site_s(const std::string& name) {
  const std::string path = scratch_folder(name) + "/site-s.toml";
  fs::copy_file(std::string(SITES_DIR) + "/site-s.toml", path);
  return path;
}

std::string names_below(const std::string& folder) {
  std::vector<std::string> names;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    const std::string name = entry.path().lexically_relative(folder).string();
    if (!name.ends_with(".journal")) names.push_back(name);
  }
  std::sort(names.begin(), names.end());
  std::string all;
  for (const std::string& name : names) all += name + "\n";
  return all;
}

}  // namespace forecourse::server
