#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/studies/day.h"

namespace forecourse::studies {

/// Why the number of a month cannot be relied on: something of the records could not be counted.
struct Unsettled {
  std::optional<std::size_t> book;  ///< empty: it may belong to any
  Day day;
  std::string words;
};

/// What the reading of records has to say. Nothing of them is left out without a word.
struct Told {
  std::vector<Diagnostic> warnings;
  std::vector<Unsettled> unsettled;

  /// Handled, and said how.
  void say(const SourceSpan& where, std::string message, std::string hint = {}) {
    warnings.push_back({Severity::warning, std::move(message), where, std::move(hint), {}});
  }
  /// Not counted: the month stays unsettled until somebody mends the row.
  void lost(std::optional<std::size_t> book, Day day, const SourceSpan& where, const std::string& message,
            std::string hint) {
    unsettled.push_back({book, day, message});
    say(where, message + "; it is not counted", std::move(hint));
  }
};

}  // namespace forecourse::studies
