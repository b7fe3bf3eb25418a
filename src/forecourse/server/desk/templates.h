#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace forecourse::server {

/// A station to begin with.
struct Template {
  std::string id;
  std::string text;
};

/// Those of the folder templates/, compiled in.
[[nodiscard]] std::vector<Template> site_templates();

/// Their texts, in the order of their file names.
[[nodiscard]] std::span<const std::string_view> template_texts();

}  // namespace forecourse::server
