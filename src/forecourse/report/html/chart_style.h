#pragma once

#include <string>
#include <string_view>

namespace forecourse::report::html {

/// The rules for drawings, with the tokens of the style sheet for every color.
[[nodiscard]] std::string_view chart_rules();

/// The tokens on paper, as the style sheet sets them: "--ink:#000;--ink2:#222;".
[[nodiscard]] std::string_view paper_tokens();

/// Rules with the values of paper in place of the tokens; one that paper does not set stays a token.
[[nodiscard]] std::string with_paper_tokens(std::string_view rules);

/// The rules for drawings with the colors of paper written out and without halos around letters, for programs that
/// know no tokens within a drawing.
[[nodiscard]] std::string chart_rules_on_paper();

}  // namespace forecourse::report::html
