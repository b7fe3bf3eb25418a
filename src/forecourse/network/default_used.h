#pragma once

#include "forecourse/base/default_used.h"

namespace forecourse::network {
using forecourse::DefaultStatus;
using forecourse::DefaultUsed;
using forecourse::word;
}  // namespace forecourse::network
