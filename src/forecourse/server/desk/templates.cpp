#include "forecourse/server/desk/templates.h"

#include <array>

namespace forecourse::server {
namespace {

constexpr std::array<const char*, 2> ids{"empty", "small-station"};  // in the order of the files

}  // namespace

std::vector<Template> site_templates() {
  std::vector<Template> templates;
  for (const std::string_view text : template_texts()) {
    templates.push_back({ids.at(templates.size()), std::string(text)});
  }
  return templates;
}

}  // namespace forecourse::server
