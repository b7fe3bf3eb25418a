#include "forecourse/lesson/questions/ask.h"

#include <algorithm>

#include "forecourse/base/nearest_word.h"

namespace forecourse::lesson {
namespace {

bool is_asked(const QuestionKind& kind, const AskOptions& options) {
  if (options.level != 0 && kind.level != options.level) return false;
  if (!options.page.empty() && kind.page != options.page) return false;
  return options.kinds.empty() || std::find(options.kinds.begin(), options.kinds.end(), kind.id) != options.kinds.end();
}

void check_word(const char* what, const std::string& word, const std::vector<std::string_view>& known,
                std::vector<Diagnostic>& out) {
  if (std::find(known.begin(), known.end(), word) != known.end()) return;
  const auto near = nearest_word(word, known);
  out.push_back(
      {Severity::error,
       std::string("there is no ") + what + " '" + word + "'",
       {},
       near ? "did you mean '" + std::string(*near) + "'?" : "the handbook lists them: docs/handbook/questions.md",
       {}});
}

}  // namespace

std::vector<Diagnostic> check_options(const AskOptions& options) {
  std::vector<Diagnostic> out;
  if (options.level < 0 || options.level > 3) {
    out.push_back({Severity::error,
                   "there is no level " + std::to_string(options.level),
                   {},
                   "write 1 (who is new), 2 (who installs) or 3 (who specifies)",
                   {}});
  }
  std::vector<std::string_view> ids;
  std::vector<std::string_view> pages;
  for (const QuestionKind& kind : question_kinds()) {
    ids.push_back(kind.id);
    pages.push_back(kind.page);
  }
  for (const std::string& kind : options.kinds) check_word("question", kind, ids, out);
  if (!options.page.empty()) check_word("page", options.page, pages, out);
  return out;
}

Asked ask_kind(const QuestionKind& kind, const Ground& ground, std::uint64_t seed) {
  const auto index = static_cast<std::uint64_t>(&kind - question_kinds().data());
  Chance chance(seed, index + 1);
  Asked out = kind.make(ground, chance);
  if (auto* none = std::get_if<LeftOut>(&out)) {
    none->question = kind.id;
    return out;
  }
  auto& question = std::get<Question>(out);
  question.question = kind.id;
  question.form = kind.form;
  question.level = kind.level;
  question.page = kind.page;
  return out;
}

AskResult ask(const Ground& ground, const AskOptions& options) {
  AskResult out;
  out.options = options;
  std::vector<const QuestionKind*> kinds;
  for (const QuestionKind& kind : question_kinds()) {
    if (is_asked(kind, options)) kinds.push_back(&kind);
  }
  Chance chance(options.seed, 0);
  chance.shuffle(kinds);
  for (const QuestionKind* kind : kinds) {
    if (out.questions.size() >= options.count) break;
    Asked asked = ask_kind(*kind, ground, options.seed);
    if (auto* question = std::get_if<Question>(&asked)) {
      out.questions.push_back(std::move(*question));
    } else {
      out.left_out.push_back(std::move(std::get<LeftOut>(asked)));
    }
  }
  const auto place = [](const std::string& id) { return find_question(id) - question_kinds().data(); };
  std::sort(out.questions.begin(), out.questions.end(),
            [&](const Question& one, const Question& other) { return place(one.question) < place(other.question); });
  std::sort(out.left_out.begin(), out.left_out.end(),
            [&](const LeftOut& one, const LeftOut& other) { return place(one.question) < place(other.question); });
  return out;
}

}  // namespace forecourse::lesson
