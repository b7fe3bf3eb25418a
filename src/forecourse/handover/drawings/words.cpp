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
  const auto tenths_in = [](double length) { return static_cast<long>(std::lround(10.0 * from_si(length, "in"))); };
  const long tenths = tenths_in(std::abs(meters)), tenths_in_foot = tenths_in(to_si(1.0, "ft"));
  const long feet = tenths / tenths_in_foot;
  const double inches = static_cast<double>(tenths % tenths_in_foot) / 10.0;
  const std::string sign = meters < 0.0 && tenths > 0 ? "-" : "";
  if (feet == 0) return sign + trimmed(inches, 1) + " in";
  return sign + std::to_string(feet) + " ft" + (inches > 0.0 ? " " + trimmed(inches, 1) + " in" : "");
}

std::string bore_words(double meters, site::Display display) {
  return display == site::Display::us ? fmt::format("{:.2f} in", from_si(meters, "in"))
                                      : fmt::format("{:.1f} mm", from_si(meters, "mm"));
}

std::string slope_words(double slope) { return trimmed(from_si(slope, "%"), 2) + " %"; }

}  // namespace forecourse::handover
