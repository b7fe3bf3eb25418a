#pragma once

#include <string>
#include <string_view>

#include "forecourse/base/diagnostic.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/site/entered.h"

namespace forecourse::studies {

/// Who asks, for the names of options in messages: the command line calls one "--stop-at", a page "stop_at".
enum class Asker { command, page };

/// The name of an option as who asks writes it. `word` is as a page writes it.
[[nodiscard]] std::string option_name(std::string_view word, Asker asker);

/// An option that is no quantity of its kind, as an error.
[[nodiscard]] Diagnostic wrong_option(const std::string& option, const UnitTextError& wrong);

/// A quantity of an option; an empty text leaves it. The error names the option.
template <class Q>
[[nodiscard]] Parsed<site::Maybe<Q>> read_option(std::string_view word, const std::string& text, Asker asker) {
  if (text.empty()) return {};
  const auto read = read_quantity(text, Q::kind());
  if (const auto* wrong = std::get_if<UnitTextError>(&read)) {
    return {std::nullopt, {wrong_option(option_name(word, asker), *wrong)}};
  }
  const Q value = Q::from_si(std::get<double>(read));
  return {site::Entered<Q>{value, value, value, {}}, {}};
}

}  // namespace forecourse::studies
