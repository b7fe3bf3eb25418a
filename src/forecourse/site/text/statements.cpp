#include "forecourse/site/text/statements.h"

#include <algorithm>

namespace forecourse::site {

namespace {

constexpr std::size_t npos = std::string_view::npos;

constexpr std::size_t most_dots = 30;

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r'; }
bool is_key_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-' || c == '.';
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
  return text;
}

/// Walks over one statement, byte by byte.
class StatementScanner {
 public:
  StatementScanner(std::string_view text, std::size_t begin) : text_(text), at_(begin) {
    statement_.begin = begin;
    statement_.is_header = text[begin] == '[';
  }

  Statement scan() {
    while (at_ < text_.size()) {
      if (text_[at_] == '\n' && ends_here()) break;
      step();
    }
    statement_.end = at_;
    if (statement_.unclosed == '\0' && !open_.empty()) statement_.unclosed = open_.back();
    while (statement_.end > statement_.begin && is_blank(text_[statement_.end - 1])) --statement_.end;
    return statement_;
  }

 private:
  [[nodiscard]] bool ends_here() const {
    if (open_.empty() || open_.back() == '{' || statement_.is_header) return true;
    return looks_like_statement(at_ + 1);
  }

  /// `key =` or a header that stands alone on its line.
  [[nodiscard]] bool looks_like_statement(std::size_t line) const {
    const std::size_t end = std::min(text_.find('\n', line), text_.size());
    std::size_t i = line;
    while (i < end && is_blank(text_[i])) ++i;
    const bool header = i < end && text_[i] == '[';
    while (i < end && text_[i] == '[') ++i;
    const std::size_t word = i;
    while (i < end && is_key_letter(text_[i])) ++i;
    if (i == word || (text_[word] >= '0' && text_[word] <= '9')) return false;
    if (header) return i < end && text_[i] == ']' && rest_is_blank(i, end);
    while (i < end && is_blank(text_[i])) ++i;
    return i < end && text_[i] == '=';
  }

  [[nodiscard]] bool rest_is_blank(std::size_t i, std::size_t end) const {
    while (i < end && (text_[i] == ']' || is_blank(text_[i]))) ++i;
    return i == end || text_[i] == '#';
  }

  void step() {
    const char c = text_[at_];
    if (c == '#') return skip_comment();
    if (c == '"' || c == '\'') return skip_quoted(c);
    if (c == '[' || c == '{') open_.push_back(c);
    if ((c == ']' || c == '}') && !open_.empty()) open_.pop_back();
    if (c == '=' && open_.empty() && statement_.equals == npos) statement_.equals = at_;
    count_parts(c);
    if (static_cast<unsigned char>(c) >= 0x80U && statement_.bare_non_ascii == npos) statement_.bare_non_ascii = at_;
    ++at_;
  }

  /// Dots between what ends a key or a value: a key of very many parts would nest tables as deep.
  void count_parts(char c) {
    if (c == '.' && ++dots_ > most_dots && statement_.deep_key == npos) statement_.deep_key = at_;
    if (std::string_view(",=[]{}").find(c) != npos) dots_ = 0;
  }

  void skip_comment() { at_ = std::min(text_.find('\n', at_), text_.size()); }

  void skip_quoted(char quote) {
    const char three[] = {quote, quote, quote};
    const std::string_view triple(three, 3);
    if (text_.substr(at_, 3) == triple) {
      const std::size_t close = closing_triple(triple);
      if (close != npos) {
        at_ = close;
        return;
      }
    }
    skip_line_quoted(quote);
  }

  [[nodiscard]] std::size_t closing_triple(std::string_view triple) const {
    std::size_t i = at_ + 3;
    while (i < text_.size() && text_.substr(i, 3) != triple) i += triple[0] == '"' && text_[i] == '\\' ? 2 : 1;
    if (i >= text_.size()) return npos;
    i += 3;
    for (int extra = 0; extra < 2 && i < text_.size() && text_[i] == triple[0]; ++extra) ++i;
    return i;
  }

  void skip_line_quoted(char quote) {
    const std::size_t open = at_;
    ++at_;
    while (at_ < text_.size() && text_[at_] != '\n') {
      const char c = text_[at_];
      at_ += c == '\\' && quote == '"' && at_ + 1 < text_.size() && text_[at_ + 1] != '\n' ? 2 : 1;
      if (c == quote) return;
    }
    statement_.unclosed = quote;
    statement_.quote = open;
  }

  std::string_view text_;
  std::size_t at_;
  Statement statement_{};
  std::vector<char> open_;
  std::size_t dots_ = 0;
};

}  // namespace

std::vector<Statement> statements_of(std::string_view text) {
  std::vector<Statement> all;
  std::size_t at = text.substr(0, 3) == "\xEF\xBB\xBF" ? 3 : 0;
  while (at < text.size()) {
    if (is_blank(text[at]) || text[at] == '\n') {
      ++at;
    } else if (text[at] == '#') {
      at = std::min(text.find('\n', at), text.size());
    } else {
      all.push_back(StatementScanner(text, at).scan());
      at = std::max(all.back().end, at + 1);
    }
  }
  return all;
}

std::string_view key_of(std::string_view text, const Statement& statement) {
  if (!statement.is_header) {
    const std::size_t end = statement.equals == npos ? statement.end : statement.equals;
    return trimmed(text.substr(statement.begin, end - statement.begin));
  }
  std::string_view inside = text.substr(statement.begin, statement.end - statement.begin);
  inside = inside.substr(std::min(inside.find_first_not_of('['), inside.size()));
  return trimmed(inside.substr(0, inside.find_first_of("]#\n")));
}

std::string_view value_of(std::string_view text, const Statement& statement) {
  if (statement.equals == npos) return {};
  const std::string_view rest = text.substr(statement.equals + 1, statement.end - statement.equals - 1);
  std::size_t end = 0;
  char quote = '\0';
  for (; end < rest.size(); ++end) {
    const char c = rest[end];
    if (quote == '\0' && c == '#') break;
    if (quote == c)
      quote = '\0';
    else if (quote == '\0' && (c == '"' || c == '\''))
      quote = c;
  }
  return trimmed(rest.substr(0, end));
}

}  // namespace forecourse::site
