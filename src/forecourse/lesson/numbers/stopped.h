#pragma once

#include <string>

#include "forecourse/site/site.h"

namespace forecourse::lesson {

/// The first pump that an emergency stop or an interlock stops; empty: none is listed.
[[nodiscard]] std::string stopped_pump(const site::Site& site, const std::string& id);

/// The dispenser or tank whose sump sensor trips an interlock; empty: none does.
[[nodiscard]] std::string watched_sump(const site::Site& site, const std::string& interlock);

}  // namespace forecourse::lesson
