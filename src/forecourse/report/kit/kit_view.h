#pragma once

#include <string>
#include <vector>

#include "forecourse/handover/kit/kit.h"
#include "forecourse/report/units.h"

namespace forecourse::report {

// A schedule in words, for every writer.

/// "bore 2.00 in"
[[nodiscard]] std::string size_in_words(const handover::KitSize& size, site::Display display, Glyphs glyphs);
/// All sizes, or "not entered".
[[nodiscard]] std::string sizes_in_words(const std::vector<handover::KitSize>& sizes, site::Display display,
                                         Glyphs glyphs);

/// "27.6 psi", "3.00 inH2O, vacuum 8.00 inH2O", "not determined", or empty where nothing presses on it.
[[nodiscard]] std::string needed_in_words(const handover::RatingNeeded& needed, site::Display display, Glyphs glyphs);

/// "UL 842 (text seen)", or "none read".
[[nodiscard]] std::string standards_in_words(const std::vector<handover::KitStandard>& standards);
/// How far the text of a standard was seen.
[[nodiscard]] const char* word(site::ClauseSeen seen);

/// "gasoline-e10", and "gasoline-e10: not determined"; empty where no fuel is.
[[nodiscard]] std::string kinds_in_words(const handover::Compatibility& compatibility);
[[nodiscard]] std::string compatibility_in_words(const handover::Compatibility& compatibility);

/// "10", "211 ft in 5 runs", or "not entered".
[[nodiscard]] std::string amount_in_words(const handover::KitRow& row, site::Display display, Glyphs glyphs);
[[nodiscard]] std::string count_in_words(const std::optional<int>& count);

/// "D1.regular, D2.regular and 8 more"
[[nodiscard]] std::string subjects_in_words(const std::vector<std::string>& subjects, std::size_t most);

}  // namespace forecourse::report
