#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/base/quantity.h"

namespace forecourse::site {

/// A value as a user entered it: the likely value, its spread where one was given, and its place in the text.
/// `low == likely == high` unless the user wrote `{ low = ..., likely = ..., high = ... }`.
template <class T>
struct Entered {
  T likely{};
  T low{};
  T high{};
  SourceSpan where{};

  [[nodiscard]] bool is_uncertain() const { return low < high; }
};

/// A quantity or number that may be missing. Missing is never zero.
template <class T>
using Maybe = std::optional<Entered<T>>;

/// A word, a name or the id of another part, as entered. Empty `text`: not entered.
struct Name {
  std::string text;
  SourceSpan where{};

  [[nodiscard]] bool empty() const { return text.empty(); }
  friend bool operator==(const Name& a, const Name& b) { return a.text == b.text; }
};

/// A fact that has no default: yes, no, or not known.
using Fact = std::optional<bool>;

/// A calendar day of the record, as entered (ISO 8601).
struct Date {
  int year = 0;
  int month = 0;
  int day = 0;
  SourceSpan where{};
};

/// A choice out of a closed list of words, with its place.
template <class E>
struct Chosen {
  E value{};
  SourceSpan where{};
};

}  // namespace forecourse::site
