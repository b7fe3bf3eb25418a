#include "forecourse/report/word_table.h"

namespace forecourse::report {

terminal::Table terminal_table(const WordTable& words) {
  terminal::Table table;
  for (std::size_t i = 0; i < words.heads.size(); ++i) {
    table.columns.push_back({words.heads[i], words.numbers[i], !words.numbers[i]});
  }
  table.rows = words.rows;
  return table;
}

html::Table page_table(const WordTable& words, const std::string& caption, const std::string& note) {
  html::Table table{caption, note, {}, {}, {}};
  for (std::size_t i = 0; i < words.heads.size(); ++i) {
    const bool last = i + 1 == words.heads.size() && !words.numbers[i];
    table.columns.push_back({words.heads[i], "", words.numbers[i], last});
  }
  for (const auto& row : words.rows) table.rows.push_back({row, false});
  return table;
}

}  // namespace forecourse::report
