#include "forecourse/report/lesson/glossary.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace forecourse::report {
namespace {

std::string trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \r");
  if (begin == std::string_view::npos) return {};
  return std::string(text.substr(begin, text.find_last_not_of(" \r") - begin + 1));
}

std::string without_ticks(std::string text) {
  text.erase(std::remove(text.begin(), text.end(), '`'), text.end());
  return text;
}

std::vector<std::string> split(std::string_view text, char mark) {
  std::vector<std::string> out;
  while (true) {
    const std::size_t end = text.find(mark);
    out.push_back(trimmed(text.substr(0, end)));
    if (end == std::string_view::npos) return out;
    text.remove_prefix(end + 1);
  }
}

/// The cells of a row of a table; none: the line is no row.
std::vector<std::string> cells_of(std::string_view line) {
  if (line.size() < 2 || line.front() != '|') return {};
  std::vector<std::string> cells = split(line.substr(1), '|');
  cells.pop_back();
  return cells;
}

char lower(char letter) { return static_cast<char>(std::tolower(static_cast<unsigned char>(letter))); }

std::string lowered(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), lower);
  return out;
}

bool is_letter(const std::string& text, std::size_t at) {
  return at < text.size() && std::isalnum(static_cast<unsigned char>(text[at])) != 0;
}

/// Whether a text has a word, alone or in the plural.
bool has_word(const std::string& text, const std::string& word) {
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    const std::size_t behind = end < text.size() && text[end] == 's' ? end + 1 : end;
    if ((at == 0 || !is_letter(text, at - 1)) && !is_letter(text, behind)) return true;
  }
  return false;
}

constexpr std::size_t shortest = 4;  ///< letters; "at" and "of" are everywhere

/// The sections of the vocabulary that are about parts along the course.
constexpr std::array<std::string_view, 5> of_course{"Delivery, fill and vent", "Tank", "Pump",
                                                    "Line, sump, shear valve", "Dispenser and hose"};

/// Words of every day whose entry tells what a key of the site file means.
constexpr std::array<std::string_view, 15> everyday{"axis",    "backfill", "blocked", "bottom", "drain",
                                                    "ground",  "opens at", "part",    "pipe",   "pull",
                                                    "running", "speed",    "through", "wall",   "well"};

}  // namespace

std::vector<GlossaryWord> read_glossary(std::string_view text) {
  std::vector<GlossaryWord> out;
  bool in_words = false;
  std::string section;
  for (const std::string& line : split(text, '\n')) {
    if (line.rfind("## ", 0) == 0) section = line.substr(3);
    const std::vector<std::string> cells = cells_of(line);
    if (cells.size() < 2) {
      in_words = false;
    } else if (cells[0] == "word" && cells[1] == "meaning") {
      in_words = true;
    } else if (in_words && cells[0].find_first_not_of("-: ") != std::string::npos) {
      out.push_back({without_ticks(cells[0]), without_ticks(cells[1]), section});
    }
  }
  return out;
}

const std::vector<GlossaryWord>& glossary() {
  static const std::vector<GlossaryWord> all = read_glossary(vocabulary_texts().front());
  return all;
}

std::vector<GlossaryWord> words_used(const std::vector<GlossaryWord>& words, std::string_view text) {
  const std::string low = lowered(text);
  std::vector<GlossaryWord> out;
  for (const GlossaryWord& one : words) {
    const std::string form = lowered(split(one.word, ',').front());
    const bool is_part = std::find(of_course.begin(), of_course.end(), one.section) != of_course.end();
    const bool is_everyday = std::find(everyday.begin(), everyday.end(), form) != everyday.end();
    if (is_part && !is_everyday && form.size() >= shortest && has_word(low, form)) out.push_back(one);
  }
  std::sort(out.begin(), out.end(),
            [](const GlossaryWord& a, const GlossaryWord& b) { return lowered(a.word) < lowered(b.word); });
  return out;
}

}  // namespace forecourse::report
