#include "forecourse/lesson/questions/make/draft.h"

#include <algorithm>
#include <cmath>

namespace forecourse::lesson {
namespace {

constexpr std::size_t wrong_answers = 3;

bool told_apart(double one, double other, double answer, double gap) {
  return std::abs(one - other) > gap * std::abs(answer);
}

bool gives_itself_away(double value, double answer) {
  const double ratio = std::abs(value / answer);
  return ratio > widest_ratio || ratio < 1.0 / widest_ratio || std::signbit(value) != std::signbit(answer);
}

bool same_words(const Phrase& one, const Phrase& other) {
  return one.words == other.words && one.values.size() == other.values.size() &&
         std::equal(one.values.begin(), one.values.end(), other.values.begin(),
                    [](const Amount& a, const Amount& b) { return a.value == b.value; });
}

}  // namespace

Asked choose_value(Question draft, const Amount& answer, const std::vector<Slip>& slips, Chance& chance, double gap) {
  if (!std::isfinite(answer.value) || answer.value == 0.0) return left_out("the answer is nothing at this station");
  std::vector<double> taken{answer.value};
  draft.options.assign(1, {{"{}", {answer}}, true, {}});
  for (const Slip& slip : slips) {
    if (draft.options.size() > wrong_answers) break;
    if (!std::isfinite(slip.value) || gives_itself_away(slip.value, answer.value)) continue;
    const bool apart = std::all_of(taken.begin(), taken.end(),
                                   [&](double one) { return told_apart(slip.value, one, answer.value, gap); });
    if (!apart) continue;
    taken.push_back(slip.value);
    draft.options.push_back({{"{}", {{slip.value, answer.quantity}}}, false, slip.why});
  }
  if (draft.options.size() < 3) return left_out("the rules of thumb all come to the right answer at this station");
  chance.shuffle(draft.options);
  draft.answer = answer;
  draft.tolerance = gap;
  return draft;
}

Asked estimate(Question draft, const Amount& answer, double tolerance) {
  if (!std::isfinite(answer.value) || answer.value == 0.0) return left_out("the answer is nothing at this station");
  draft.answer = answer;
  draft.tolerance = tolerance;
  return draft;
}

Asked choose_words(Question draft, const Phrase& right, const std::vector<Option>& wrong, Chance& chance) {
  draft.options.assign(1, {right, true, {}});
  for (const Option& one : wrong) {
    if (draft.options.size() > wrong_answers) break;
    const bool new_one = std::none_of(draft.options.begin(), draft.options.end(),
                                      [&](const Option& other) { return same_words(one.words, other.words); });
    if (new_one) draft.options.push_back(one);
  }
  if (draft.options.size() < 3) return left_out("this station leaves fewer than three answers to choose from");
  chance.shuffle(draft.options);
  return draft;
}

Asked in_order(Question draft, std::vector<Ranked> items, double gap, std::size_t least, std::size_t most) {
  std::sort(items.begin(), items.end(), [](const Ranked& one, const Ranked& other) { return one.key < other.key; });
  std::vector<Ranked> kept;
  for (const Ranked& item : items) {
    if (!std::isfinite(item.key)) continue;
    if (kept.empty() || item.key - kept.back().key > gap) kept.push_back(item);
  }
  if (kept.size() < least) return left_out("too few of them can be told apart at this station");
  // Evenly over the whole, so that the first and the last stay.
  const std::size_t count = std::min(kept.size(), most);
  Phrase follows{"In this order:", {}};
  for (std::size_t i = 0; i < count; ++i) {
    const Ranked& item = kept[i * (kept.size() - 1) / (count - 1)];
    draft.options.push_back({item.words, true, {}});
    if (!item.shown) continue;
    follows.words += follows.values.empty() ? " {}" : ", {}";
    follows.values.push_back(*item.shown);
  }
  if (follows.values.size() == count) draft.follows = std::move(follows);
  return draft;
}

}  // namespace forecourse::lesson
