#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <string>

namespace forecourse::report {

/// True if `text` is what the file `snapshots/<name>` holds. Otherwise the new text is written beside it as
/// `<name>.new`: look at it, and if it is right, move it over the old one.
[[nodiscard]] inline ::testing::AssertionResult matches_snapshot(const std::string& text, const std::string& name) {
  const std::string path = std::string(TEST_SOURCE_DIR) + "/report/snapshots/" + name;
  std::ifstream file(path, std::ios::binary);
  const std::string expected{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  if (file && text == expected) return ::testing::AssertionSuccess();
  std::ofstream(path + ".new", std::ios::binary) << text;
  return ::testing::AssertionFailure() << "differs from " << path << "; the new text is beside it as .new";
}

}  // namespace forecourse::report
