#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "forecourse/lesson/ground.h"
#include "forecourse/lesson/questions/chance.h"
#include "forecourse/lesson/told.h"

namespace forecourse::lesson {

enum class Form {
  choice,    ///< one of several answers is right
  estimate,  ///< a number, right within a tolerance
  order,     ///< events or parts to be put in order
  fault,     ///< which part is at fault, from readings
};
[[nodiscard]] const char* word(Form form);

/// A value with what it is.
struct Amount {
  double value = 0.0;  ///< [SI]
  Quantity quantity = Quantity::flow;
};

/// Words with values in them, written in the reader's units: each "{}" stands for the next value.
struct Phrase {
  std::string words;
  std::vector<Amount> values = {};
};

/// One answer of a choice, or one item of an order.
struct Option {
  Phrase words;
  bool right = false;
  std::string why;  ///< of a wrong one: the rule or the slip that leads to it
};

/// A question with the answer that this station gives.
struct Question {
  std::string question;  ///< id of its kind
  Form form = Form::choice;
  int level = 1;        ///< 1 who is new, 2 who installs, 3 who specifies
  std::string page;     ///< id of the page that it belongs to
  std::string at;       ///< id of the part it is about; empty: the whole station
  std::string caution;  ///< shown before it; empty: none is needed
  Phrase asks;
  /// Of a choice and a fault shuffled, of an order in the order to be found.
  std::vector<Option> options;
  std::optional<Amount> answer;  ///< of an estimate, and of a choice between values
  /// Share of the answer within which an estimate still counts as right; of a choice, beyond which every wrong answer
  /// lies; of an order, by which each item differs from the next [1].
  double tolerance = 0.0;
  Phrase explains;       ///< why, with the numbers of the station
  Phrase follows;        ///< how the answer follows: the law with its numbers; empty: `explains` is all there is
  std::string rests_on;  ///< an unpublished default that the answer rests on; empty: none
  Proof proof;           ///< of the answer; empty command: it is in no document
};

/// A question that this station makes trivial, ambiguous, or impossible.
struct LeftOut {
  std::string question;
  std::string reason;
};

using Asked = std::variant<Question, LeftOut>;

/// A kind of question: what is asked, of any station.
struct QuestionKind {
  std::string_view id;  ///< "volume-at-95-percent"
  Form form = Form::choice;
  int level = 1;
  std::string_view page;
  Asked (*make)(const Ground& ground, Chance& chance) = nullptr;
};

/// Every kind, in the order of the course.
[[nodiscard]] const std::vector<QuestionKind>& question_kinds();
[[nodiscard]] const QuestionKind* find_question(std::string_view id);

}  // namespace forecourse::lesson
