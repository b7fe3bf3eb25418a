#pragma once

#include <string>

#include "forecourse/site/site.h"

namespace forecourse::test {

/// The text of an example station in sites/.
std::string site_text(const std::string& name);

/// A station from its text; the test fails, with what is wrong, if there is an error in it.
site::Site station(const std::string& text);

/// The text with one value changed, as `--set` does it.
std::string with(const std::string& text, const std::string& path, const std::string& value);

/// Flow in US gallons per minute, pressure in pounds per square inch.
/// SOURCE: [nist_sp811, appendix B] gallon 231 in3, pound-force per square inch 6894.757 Pa.
double in_gpm(double cubic_meters_per_second);
double in_psi(double pascal);

}  // namespace forecourse::test
