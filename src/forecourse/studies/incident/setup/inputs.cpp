#include "forecourse/studies/incident/setup/inputs.h"

#include <cstdint>
#include <utility>

namespace forecourse::studies {
namespace {

/// A number for a name, the same in every run and build (FNV-1a over its bytes).
std::uint32_t number_of(const std::string& name) {
  std::uint32_t h = 2166136261U;
  for (const char c : name) h = (h ^ static_cast<unsigned char>(c)) * 16777619U;
  return h;
}

}  // namespace

double Inputs::take(InputUsed used) {
  for (std::size_t i = 0; i < used_.size(); ++i) {
    if (used_[i].what == used.what) return taken_[i];
  }
  double value = used.value.likely;
  if (draws_ != nullptr && !used.value.is_certain()) {
    value = draws_->triangular(number_of(used.what), used.value.low, used.value.likely, used.value.high);
  }
  used_.push_back(std::move(used));
  taken_.push_back(value);
  return value;
}

}  // namespace forecourse::studies
