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

/// A length of pipe, laid or to order: as told, "at least" that where a run is without a length, "not entered" where
/// all are.
[[nodiscard]] std::string total_in_words(const handover::PipeTotal& pipe, const std::string& told);
/// "5", "5, 2 without a length"; where all are, their total says so.
[[nodiscard]] std::string runs_in_words(const handover::PipeTotal& pipe);
/// What the order needs and the file does not tell, spreads of a length among it.
[[nodiscard]] std::vector<std::string> not_told_in_words(const handover::Kit& kit, site::Display display,
                                                         Glyphs glyphs);

/// "10", "211 ft in 5 runs", "at least 211 ft in 5 runs, 2 without a length", or "not entered".
[[nodiscard]] std::string amount_in_words(const handover::KitRow& row, site::Display display, Glyphs glyphs);
[[nodiscard]] std::string count_in_words(const std::optional<int>& count);

/// "D1.regular, D2.regular and 8 more"
[[nodiscard]] std::string subjects_in_words(const std::vector<std::string>& subjects, std::size_t most);

}  // namespace forecourse::report
