#include <algorithm>
#include <set>
#include <span>

#include "forecourse/base/nearest_word.h"
#include "forecourse/lesson/failures/replay.h"
#include "forecourse/lesson/lesson.h"
#include "forecourse/lesson/numbers/number.h"
#include "forecourse/lesson/pages/merged_page.h"
#include "forecourse/lesson/pages/page_kind.h"
#include "forecourse/site/rules/read_rule_set.h"

namespace forecourse::lesson {
namespace {

using Words = std::vector<std::string>;

constexpr std::size_t most_told = 12;

/// "did you mean 'drop'?", or what there is.
std::string offered(const std::string& word, const Words& known) {
  if (known.empty()) return "leave it out";
  const auto near = nearest_word(word, std::span<const std::string>(known));
  if (near) return "did you mean '" + std::string(*near) + "'?";
  std::string all;
  for (std::size_t i = 0; i < std::min(most_told, known.size()); ++i) all += (i == 0 ? "" : ", ") + known[i];
  return "there are: " + all + (known.size() > most_told ? ", ..." : "");
}

template <class Kinds>
Words ids_of(const Kinds& kinds) {
  Words out;
  out.reserve(kinds.size());
  for (const auto& kind : kinds) out.emplace_back(kind.id);
  return out;
}

Words stop_words() {
  Words out;
  for (int i = static_cast<int>(site::Stop::tanker); i <= static_cast<int>(site::Stop::vapor); ++i) {
    out.emplace_back(site::word(static_cast<site::Stop>(i)));
  }
  return out;
}

Words requirement_ids() {
  Words out;
  for (const site::RuleSet& set : site::built_in_rule_sets()) {
    for (const site::Requirement& one : set.requirements) out.push_back(set.id.text + "." + one.id.text);
  }
  return out;
}

class LessonCheck {
 public:
  explicit LessonCheck(const Ground& ground) : ground_(ground) {}

  std::vector<Diagnostic> all(const LessonFile& file) {
    for (const PageEntry& page : file.pages) {
      if (!page.page.empty()) check(page);
    }
    return std::move(found_);
  }

 private:
  void error(SourceSpan where, std::string message, std::string hint) {
    found_.push_back({Severity::error, std::move(message), where, std::move(hint), {}});
  }

  void check(const PageEntry& page) {
    const PageKind* kind = find_page(page.page.text);
    if (kind == nullptr) {
      error(page.page.where, "there is no page '" + page.page.text + "'",
            offered(page.page.text, ids_of(page_kinds())));
    } else {
      if (!seen_.insert(page.page.text).second) {
        error(page.page.where, "page '" + page.page.text + "' stands twice", "leave one of them out");
      }
      part(page, *kind);
    }
    if (!page.stop.empty() && !stop_of(page.stop.text)) {
      error(page.stop.where, "there is no stop '" + page.stop.text + "'", offered(page.stop.text, stop_words()));
    }
    names(page.numbers, "number", ids_of(number_kinds()));
    names(page.failures, "failure", ids_of(failure_kinds()));
    names(page.questions, "question", ids_of(question_kinds()));
    names(page.clauses, "requirement", requirement_ids());
  }

  void part(const PageEntry& page, const PageKind& kind) {
    if (page.at.empty()) return;
    const Words parts = kind.parts(ground_.site);
    if (std::find(parts.begin(), parts.end(), page.at.text) != parts.end()) return;
    const std::string noun(kind.part);
    error(page.at.where, "'" + page.at.text + "' is no " + noun + " of this station",
          parts.empty() ? "the station has none: leave the page out, or " + std::string(kind.enter)
                        : offered(page.at.text, parts));
  }

  void names(const std::optional<std::vector<site::Name>>& given, const char* noun, const Words& known) {
    if (!given) return;
    for (const site::Name& one : *given) {
      if (std::find(known.begin(), known.end(), one.text) != known.end()) continue;
      error(one.where, "there is no " + std::string(noun) + " '" + one.text + "'", offered(one.text, known));
    }
  }

  const Ground& ground_;
  std::set<std::string> seen_;
  std::vector<Diagnostic> found_;
};

}  // namespace

std::vector<Diagnostic> check_lesson(const LessonFile& file, const Ground& ground) {
  return LessonCheck(ground).all(file);
}

}  // namespace forecourse::lesson
