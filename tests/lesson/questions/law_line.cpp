#include "lesson/questions/law_line.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <string_view>
#include <vector>

namespace forecourse::test {
namespace {

/// Works out sums, products, powers, roots: sum = product {(+|−) product}, product = power {(×|/) power},
/// power = value [^ value].
class Arithmetic {
 public:
  Arithmetic(std::string_view text, const std::vector<lesson::Amount>& values, std::size_t& next)
      : text_(text), values_(values), next_(next) {}

  double all() {
    const double out = sum();
    if (!text_.empty()) throw std::runtime_error("not understood: '" + std::string(text_) + "'");
    return out;
  }

 private:
  bool take(std::string_view token) {
    while (!text_.empty() && text_.front() == ' ') text_.remove_prefix(1);
    if (text_.substr(0, token.size()) != token) return false;
    text_.remove_prefix(token.size());
    return true;
  }

  double sum() {
    double out = product();
    while (true) {
      if (take("+")) {
        out += product();
      } else if (take("−")) {
        out -= product();
      } else {
        return out;
      }
    }
  }

  double product() {
    double out = power();
    while (true) {
      if (take("×")) {
        out *= power();
      } else if (take("/")) {
        out /= power();
      } else {
        return out;
      }
    }
  }

  double power() {
    const double base = value();
    return take("^") ? std::pow(base, value()) : base;
  }

  double value() {
    if (take("{}")) return values_.at(next_++).value;
    if (take("√")) return std::sqrt(value());
    if (take("ln")) return std::log(value());
    if (take("cos")) return std::cos(value());
    if (take("sin")) return std::sin(value());
    if (take("π")) return std::numbers::pi;
    if (take("(")) {
      const double inside = sum();
      if (!take(")")) throw std::runtime_error("a bracket is left open");
      return inside;
    }
    std::size_t length = 0;
    const double out = std::stod(std::string(text_), &length);
    text_.remove_prefix(length);
    return out;
  }

  std::string_view text_;
  const std::vector<lesson::Amount>& values_;
  std::size_t& next_;
};

std::size_t places_in(std::string_view text) {
  std::size_t out = 0;
  for (std::size_t at = text.find("{}"); at != std::string_view::npos; at = text.find("{}", at + 2)) ++out;
  return out;
}

/// \param next the first value that stands in the text
std::string faults_of_sides(std::string_view text, const std::vector<lesson::Amount>& values, std::size_t next) {
  std::vector<double> sides;
  while (!text.empty()) {
    const std::size_t end = text.find(" = ");
    sides.push_back(Arithmetic(text.substr(0, end), values, next).all());
    text = end == std::string_view::npos ? std::string_view() : text.substr(end + 3);
  }
  // The values are the engine's own: networks are solved to far less than 1e-5, deliveries and links are integrated.
  for (const double side : sides) {
    if (std::abs(side - sides.front()) > 1e-5 * std::abs(sides.front())) {
      return "the sides of its law differ: " + std::to_string(side / sides.front());
    }
  }
  return next == values.size() ? "" : "its law leaves values over";
}

std::string faults_of_order(const std::vector<lesson::Amount>& values) {
  const auto rises = [](const lesson::Amount& a, const lesson::Amount& b) { return a.value < b.value; };
  const auto falls = [](const lesson::Amount& a, const lesson::Amount& b) { return a.value > b.value; };
  const bool in_order =
      std::is_sorted(values.begin(), values.end(), rises) || std::is_sorted(values.begin(), values.end(), falls);
  return in_order ? "" : "its figures are in no order";
}

}  // namespace

std::string faults_of_law(const lesson::Question& question) {
  const lesson::Phrase& law = question.follows;
  if (law.words.empty()) return {};
  if (question.form == lesson::Form::order) return faults_of_order(law.values);
  if (law.words.find(" = ") == std::string::npos) return {};
  const std::size_t colon = law.words.rfind(": ");
  if (colon == std::string::npos) return "its law has no words before its sides";
  const std::string_view words(law.words);
  std::string fault = faults_of_sides(words.substr(colon + 2), law.values, places_in(words.substr(0, colon)));
  if (fault.empty() && question.form == lesson::Form::estimate && law.values.back().value != question.answer->value &&
      question.answer->quantity == law.values.back().quantity) {
    fault = "its law does not end in the answer";
  }
  return fault.empty() ? fault : fault + "\n  " + law.words;
}

}  // namespace forecourse::test
