#pragma once

#include <string>

#include "forecourse/site/site.h"

namespace forecourse::server {

/// The day it is, in the time zone of the machine.
[[nodiscard]] site::Date today();

/// Now, in UTC, as iCalendar writes it: "20261130T120000Z".
[[nodiscard]] std::string now_in_utc();

/// "25 Nov 2026"
[[nodiscard]] std::string in_words(const site::Date& day);

}  // namespace forecourse::server
