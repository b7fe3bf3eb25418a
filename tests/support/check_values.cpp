#include "support/check_values.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <set>
#include <sstream>
#include <stdexcept>

#include "forecourse/base/api_units.h"

namespace forecourse::test {
namespace {

std::string trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r\n");
  if (first == std::string_view::npos) return "";
  return std::string(text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1));
}

// One record of RFC 4180: quoted fields may hold commas, doubled quotes and line ends.
std::optional<std::vector<std::string>> next_record(const std::string& text, std::size_t& at) {
  if (at >= text.size()) return std::nullopt;
  std::vector<std::string> fields(1);
  bool quoted = false;
  while (at < text.size()) {
    const char c = text[at++];
    if (quoted) {
      const bool doubled = c == '"' && at < text.size() && text[at] == '"';
      if (doubled) ++at;
      if (c == '"' && !doubled) quoted = false;
      if (c != '"' || doubled) fields.back() += c;
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',') {
      fields.emplace_back();
    } else if (c == '\n') {
      break;
    } else if (c != '\r') {
      fields.back() += c;
    }
  }
  return fields;
}

Verified verified_of(const std::string& word) {
  if (word == "yes") return Verified::published;
  return word == "computed" ? Verified::computed : Verified::memory;
}

void read_rows(const std::string& path, std::vector<CheckRow>& rows) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path);
  std::stringstream whole;
  whole << file.rdbuf();
  const std::string text = whole.str();
  std::size_t at = 0;
  (void)next_record(text, at);  // header
  while (const auto f = next_record(text, at)) {
    if (f->size() < 8) continue;  // blank line
    rows.push_back({(*f)[0], (*f)[1], (*f)[2], (*f)[3], (*f)[4], (*f)[5], (*f)[6], verified_of((*f)[7])});
  }
}

const std::vector<CheckRow>& all_rows() {
  static const std::vector<CheckRow> rows = [] {
    std::vector<CheckRow> read;
    read_rows(TEST_DATA_DIR "/check_values.csv", read);
    read_rows(TEST_DATA_DIR "/check_values2.csv", read);
    return read;
  }();
  return rows;
}

// The number a text begins with, and where it ends.
std::optional<double> leading_number(const std::string& text, std::size_t& length) {
  if (text.empty() || std::string_view("+-.0123456789").find(text[0]) == std::string_view::npos) return std::nullopt;
  char* end = nullptr;
  const double value = std::strtod(text.c_str(), &end);
  length = static_cast<std::size_t>(end - text.c_str());
  return length > 0 ? std::optional(value) : std::nullopt;
}

double half_of_last_digit(std::string_view printed) {
  const std::string text(printed.substr(0, printed.find_first_of("eE")));
  const auto point = text.find('.');
  const int decimals = point == std::string::npos ? 0 : static_cast<int>(text.size() - point - 1);
  const auto exponent = printed.find_first_of("eE");
  const int power = exponent == std::string_view::npos ? 0 : std::stoi(std::string(printed.substr(exponent + 1)));
  return 0.5 * std::pow(10.0, power - decimals);
}

// Rows checked so far; each row counts once, however often it is used.
class CheckCount : public testing::Environment {
 public:
  void add(const CheckRow& check) {
    auto& ids = check.verified == Verified::published ? published_ : computed_;
    ids[check.id.substr(0, check.id.find('-'))].insert(check.id);
  }

  void TearDown() override {
    std::set<std::string> prefixes;
    for (const auto& [prefix, ids] : published_) prefixes.insert(prefix);
    for (const auto& [prefix, ids] : computed_) prefixes.insert(prefix);
    for (const std::string& prefix : prefixes) {
      std::cout << "checked " << prefix << ": published " << published_[prefix].size() << ", computed "
                << computed_[prefix].size() << '\n';
    }
  }

 private:
  std::map<std::string, std::set<std::string>> published_, computed_;
};

// GoogleTest owns it.
CheckCount* const check_count = [] {
  auto* count = new CheckCount;
  testing::AddGlobalTestEnvironment(count);
  return count;
}();

}  // namespace

double CheckRow::number() const {
  std::size_t length = 0;
  const auto value = leading_number(expected, length);
  if (!value) throw std::invalid_argument(id + ": expected is no number: " + expected);
  return *value;
}

std::vector<CheckRow> rows_starting(std::string_view prefix) {
  std::vector<CheckRow> found;
  for (const CheckRow& candidate : all_rows()) {
    if (candidate.id.starts_with(prefix) && candidate.verified != Verified::memory) found.push_back(candidate);
  }
  return found;
}

CheckRow row(std::string_view id) {
  const auto found = std::ranges::find(all_rows(), id, &CheckRow::id);
  if (found == all_rows().end() || found->verified == Verified::memory) {
    throw std::out_of_range("no reference row " + std::string(id));
  }
  return *found;
}

std::vector<std::string> parts_of(std::string_view inputs) {
  std::vector<std::string> parts;
  std::size_t begin = 0;
  while (begin <= inputs.size()) {
    const auto end = std::min(inputs.find(';', begin), inputs.size());
    parts.push_back(trimmed(inputs.substr(begin, end - begin)));
    begin = end + 1;
  }
  return parts;
}

std::map<std::string, std::string> parse_inputs(std::string_view inputs) {
  std::map<std::string, std::string> found;
  for (const std::string& part : parts_of(inputs)) {
    const auto equals = part.find('=');
    if (equals == std::string::npos) {
      found[part] = "";
    } else {
      found[trimmed(part.substr(0, equals))] = trimmed(part.substr(equals + 1));
    }
  }
  return found;
}

std::optional<double> number_in(std::string_view text) {
  std::istringstream words{std::string(text)};
  std::string word;
  while (words >> word) {
    std::size_t length = 0;
    if (const auto value = leading_number(word, length)) return value;
  }
  return std::nullopt;
}

double input_number(const CheckRow& check, const std::string& name) {
  const auto inputs = parse_inputs(check.inputs);
  const auto found = inputs.find(name);
  const auto value = found == inputs.end() ? std::nullopt : number_in(found->second);
  if (!value) throw std::invalid_argument(check.id + ": no number for input " + name);
  return *value;
}

double kelvin_in(std::string_view text) {
  const double value =
      number_in(text.substr(text.find('=') == std::string_view::npos ? 0 : text.find('=') + 1)).value();
  if (text.find("degF") != std::string_view::npos) return kelvin_from_fahrenheit(value);
  if (text.find("degC") != std::string_view::npos) return kelvin_from_celsius(value);
  throw std::invalid_argument("no degF or degC in " + std::string(text));
}

std::optional<Tolerance> parse_tolerance(std::string_view tolerance, std::string_view expected) {
  const std::string text = trimmed(tolerance);
  // "exact" still lets a value pass through a conversion of units: a few units in the last place of a double.
  if (text.starts_with("exact")) return Tolerance{0.0, 1e-14};
  if (text.starts_with("printed digits")) return Tolerance{half_of_last_digit(expected) * (1.0 + 1e-9), 0.0};
  std::size_t length = 0;
  const auto value = leading_number(text, length);
  if (!value) return std::nullopt;
  const std::string rest = trimmed(std::string_view(text).substr(length));
  if (rest.starts_with("%")) return Tolerance{0.0, *value / 100.0};
  if (rest.starts_with("rel")) return Tolerance{0.0, *value};
  return Tolerance{*value, 0.0};
}

std::pair<double, double> parse_range(std::string_view expected) {
  const std::string text = trimmed(expected);
  std::size_t length = 0;
  const double low = leading_number(text, length).value();
  if (length >= text.size() || text[length] != '-') return {low, low};
  const std::string upper = text.substr(length + 1);
  return {low, leading_number(upper, length).value()};
}

testing::AssertionResult agrees(const CheckRow& check, double value) {
  const auto tolerance = parse_tolerance(check.tolerance, check.expected);
  if (!tolerance) return testing::AssertionFailure() << check.id << ": tolerance is no number: " << check.tolerance;
  return agrees(check, value, *tolerance);
}

testing::AssertionResult agrees(const CheckRow& check, double value, Tolerance tolerance) {
  count_check(check);
  const double expected = check.number();
  const double allowed = tolerance.absolute + tolerance.relative * std::abs(expected);
  if (std::abs(value - expected) <= allowed) return testing::AssertionSuccess();
  std::ostringstream text;
  text.precision(15);
  text << check.id << ": expected " << check.expected << ' ' << check.unit << ", got " << value << ", off by "
       << value - expected << ", allowed " << allowed << " (" << check.source << ')';
  return testing::AssertionFailure() << text.str();
}

void count_check(const CheckRow& check) { check_count->add(check); }

}  // namespace forecourse::test
