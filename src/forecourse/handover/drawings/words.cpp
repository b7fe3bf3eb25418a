#include "forecourse/handover/drawings/words.h"

#include <fmt/format.h>

#include <cmath>

#include "forecourse/base/unit_text.h"

namespace forecourse::handover {
namespace {

/// With as many decimals, but no zeros at its end.
std::string trimmed(double value, int decimals) {
  std::string out = fmt::format("{:.{}f}", value, decimals);
  if (out.find('.') == std::string::npos) return out;
  out.erase(out.find_last_not_of('0') + 1);
  if (out.ends_with('.')) out.pop_back();
  return out == "-0" ? "0" : out;
}

}  // namespace

std::string length_words(double meters, site::Display display) {
  if (display == site::Display::si) {
    constexpr double told_in_mm = 0.1;  // [m]
    if (std::abs(meters) < told_in_mm) return trimmed(from_si(meters, "mm"), 0) + " mm";
    return fmt::format("{:.2f} m", meters);
  }
  const double inches_in_foot = from_si(to_si(1.0, "ft"), "in");
  const double tenths = std::round(10.0 * from_si(std::abs(meters), "in"));
  const double feet = std::floor(tenths / (10.0 * inches_in_foot));
  const double inches = tenths / 10.0 - inches_in_foot * feet;
  const std::string sign = meters < 0.0 && tenths > 0.0 ? "-" : "";
  if (feet == 0.0) return sign + trimmed(inches, 1) + " in";
  return sign + trimmed(feet, 0) + " ft" + (inches > 0.0 ? " " + trimmed(inches, 1) + " in" : "");
}

std::string bore_words(double meters, site::Display display) {
  return display == site::Display::us ? fmt::format("{:.2f} in", from_si(meters, "in"))
                                      : fmt::format("{:.1f} mm", from_si(meters, "mm"));
}

std::string slope_words(double slope) { return trimmed(from_si(slope, "%"), 2) + " %"; }

}  // namespace forecourse::handover
