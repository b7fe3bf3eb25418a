#include "forecourse/lesson/pages/merged_page.h"

#include "forecourse/site/rules/read_rule_set.h"

namespace forecourse::lesson {
namespace {

void take(const site::Name& from, site::Name& to) {
  if (to.empty()) to = from;
}

template <class List>
void take(const std::optional<List>& from, std::optional<List>& to) {
  if (!to) to = from;
}

}  // namespace

PageEntry merged_page(const PageEntry& page) {
  PageEntry out = page;
  for (const PageEntry& built_in : built_in_lesson().pages) {
    if (!(built_in.page == page.page)) continue;
    take(built_in.stop, out.stop);
    take(built_in.title, out.title);
    take(built_in.prevents, out.prevents);
    take(built_in.without, out.without);
    take(built_in.notes, out.notes);
    take(built_in.synonyms, out.synonyms);
    take(built_in.numbers, out.numbers);
    take(built_in.failures, out.failures);
    take(built_in.questions, out.questions);
    take(built_in.clauses, out.clauses);
  }
  return out;
}

std::optional<site::Stop> stop_of(std::string_view word) {
  for (int i = static_cast<int>(site::Stop::tanker); i <= static_cast<int>(site::Stop::vapor); ++i) {
    const auto stop = static_cast<site::Stop>(i);
    if (site::word(stop) == word) return stop;
  }
  return std::nullopt;
}

KnownRequirement requirement_of(std::string_view id) {
  for (const site::RuleSet& set : site::built_in_rule_sets()) {
    const std::string head = set.id.text + ".";
    if (id.substr(0, head.size()) != head) continue;
    for (const site::Requirement& one : set.requirements) {
      if (one.id.text == id.substr(head.size())) return {&set, &one};
    }
  }
  return {};
}

}  // namespace forecourse::lesson
