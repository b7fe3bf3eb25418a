#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace forecourse {

/// Number of letters to put in, take out, change, or swap with their neighbor to turn one word into the other
/// (Damerau-Levenshtein distance in which no part of the word is edited twice). Bytes count as letters.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

/// The known word that a misspelt one most likely stands for; none when no word is near enough.
///
/// A word that differs only in upper and lower case, or in '-' for '_', is always near. Otherwise one edit
/// is allowed for words of up to five letters and one more for every three letters beyond. Of equally near words the
/// first is taken, so the order of `known` is the order of preference.
/// \return a view of an element of `known`
[[nodiscard]] std::optional<std::string_view> nearest_word(std::string_view word,
                                                           std::span<const std::string_view> known);
[[nodiscard]] std::optional<std::string_view> nearest_word(std::string_view word, std::span<const std::string> known);

}  // namespace forecourse
