#include "forecourse/report/drawing/tone.h"

namespace forecourse::report::drawing {
namespace {

bool is_distillate(const site::Product& product) {
  const std::string& kind = product.kind.text;
  return kind.starts_with("diesel") || kind == "kerosene" || kind == "heating-oil";
}

}  // namespace

std::string tone_of(const site::Site& site, const std::string& product) {
  bool first = true;
  for (const site::Product& p : site.products) {
    if (p.id.text == product) return is_distillate(p) ? "diesel" : first ? "regular" : "premium";
    if (!is_distillate(p)) first = false;
  }
  return "regular";
}

}  // namespace forecourse::report::drawing
