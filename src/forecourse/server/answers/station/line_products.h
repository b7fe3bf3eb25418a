#pragma once

#include "forecourse/server/answers/station/station_parts.h"

namespace forecourse::server {

/// Gives pumps the product of their tank, and lines and branches the one that reaches them over the lines.
void tell_products(std::vector<StationPart>& parts);

}  // namespace forecourse::server
