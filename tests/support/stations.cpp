#include "support/stations.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <utility>
#include <vector>

#include "forecourse/site/edit.h"
#include "forecourse/site/read.h"

namespace forecourse::test {
namespace {

std::string told(const std::vector<Diagnostic>& diagnostics) {
  std::string out;
  for (const Diagnostic& d : diagnostics) out += std::string(word(d.severity)) + ": " + d.message + "\n";
  return out;
}

}  // namespace

std::string site_text(const std::string& name) {
  std::ifstream in(std::string(SITES_DIR) + "/" + name + ".toml", std::ios::binary);
  EXPECT_TRUE(in) << name;
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

site::Site station(const std::string& text) {
  Parsed<site::Site> read = site::read_site(text);
  EXPECT_TRUE(read.ok()) << told(read.diagnostics);
  return std::move(read.value);
}

std::string with(const std::string& text, const std::string& path, const std::string& value) {
  Parsed<std::string> changed = site::set_value(text, path, value);
  EXPECT_TRUE(changed.ok()) << told(changed.diagnostics);
  return std::move(changed.value);
}

double in_gpm(double cubic_meters_per_second) {
  return cubic_meters_per_second / (231.0 * 0.0254 * 0.0254 * 0.0254 / 60.0);
}

double in_psi(double pascal) { return pascal / (0.45359237 * 9.80665 / (0.0254 * 0.0254)); }

}  // namespace forecourse::test
