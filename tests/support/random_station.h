#pragma once

#include <cstdint>
#include <string>

namespace forecourse::test {

/// The text of an invented station that reads without an error, another one for each seed: one to four tanks with
/// pumps, lines in a row or with a branch, one to eight dispensers with one or two hoses a product, and around them,
/// now there and now not, sumps, shear valves, vents, overfill devices, a delivery, interlocks. No figure of it is of a
/// device.
std::string random_station(std::uint64_t seed);

}  // namespace forecourse::test
