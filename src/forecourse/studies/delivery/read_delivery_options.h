#pragma once

#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/studies/delivery/options.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::studies {

/// What a delivery is asked for, as texts.
struct DeliveryTexts {
  std::string delivery;
  std::string tank;
  std::string volume;
  std::string rate;
  std::string stop_at;
  std::vector<std::string> without;
  std::vector<std::string> blocked;
};

[[nodiscard]] Parsed<DeliveryOptions> read_delivery_options(const DeliveryTexts& texts, Asker asker);

/// The words of what can be left out.
[[nodiscard]] std::vector<std::string> delivery_part_words();

}  // namespace forecourse::studies
