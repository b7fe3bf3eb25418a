#pragma once

#include <string>
#include <string_view>

namespace forecourse::report::html {

enum class Paper { a4, letter };

/// A report of `page()` made ready for a program that sets pages and knows no tokens within drawings: the size of the
/// paper, and in each drawing the rules it is drawn by. Nothing that is read changes.
[[nodiscard]] std::string on_paper(std::string_view report, Paper paper);

}  // namespace forecourse::report::html
