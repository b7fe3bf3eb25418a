#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace forecourse::report {

/// A word of the trade and what it means.
struct GlossaryWord {
  std::string word;  ///< "restricts at, closes at"
  std::string meaning;
  std::string section;  ///< heading of its table: "Tank"
};

/// The words of a vocabulary page (docs/vocabulary.md): of each table with the columns word and meaning.
[[nodiscard]] std::vector<GlossaryWord> read_glossary(std::string_view text);

/// The built-in vocabulary.
[[nodiscard]] const std::vector<GlossaryWord>& glossary();

/// Those of the parts along the course whose first form a text uses, as a whole word; in the order of the alphabet.
[[nodiscard]] std::vector<GlossaryWord> words_used(const std::vector<GlossaryWord>& words, std::string_view text);

/// docs/vocabulary.md, as compiled in (see cmake/embed.cmake).
[[nodiscard]] std::span<const std::string_view> vocabulary_texts();

}  // namespace forecourse::report
