#pragma once

#include <string>

#include "forecourse/site/site.h"

namespace forecourse::handover {

/// A length as drawings letter it: "4 ft 3 in", "6.5 in"; "1.30 m", "16 mm" below a tenth of a meter.
[[nodiscard]] std::string length_words(double meters, site::Display display);

/// A bore: "2.00 in", "50.8 mm".
[[nodiscard]] std::string bore_words(double meters, site::Display display);

/// A slope: "0.5 %".
[[nodiscard]] std::string slope_words(double slope);

}  // namespace forecourse::handover
