#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/checks/finding.h"
#include "forecourse/site/entered.h"

namespace forecourse::cli {

/// "25 Nov 2026", in the time zone of the machine.
[[nodiscard]] std::string today();

/// Now, in UTC, as iCalendar writes it: "20261130T120000Z".
[[nodiscard]] std::string now_in_utc();

/// The day of an option, "2026-11-25"; of an empty text today. Empty, with the reason on standard error, if it is none.
[[nodiscard]] std::optional<site::Date> day_of(const std::string& text, const std::string& option = "--on");

/// Makes a folder with those above it; false, with the reason on standard error, if it cannot be.
[[nodiscard]] bool make_folder(const std::string& folder);

/// Path of a file or folder that is built beside the program.
[[nodiscard]] std::string beside_program(const std::string& name);

/// True if one of them falls short.
[[nodiscard]] bool falls_short(const std::vector<checks::Finding>& findings);

}  // namespace forecourse::cli
