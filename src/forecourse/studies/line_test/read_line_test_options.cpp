#include "forecourse/studies/line_test/read_line_test_options.h"

#include <algorithm>

#include "forecourse/base/decimal.h"

namespace forecourse::studies {
namespace {

enum class Least { any, zero, above_zero };

class Reader {
 public:
  Reader(Asker asker, std::vector<Diagnostic>& wrong) : asker_(asker), wrong_(wrong) {}

  template <class Q>
  std::optional<double> read(const char* word, const std::string& text, Least least) {
    const Parsed<site::Maybe<Q>> found = read_option<Q>(word, text, asker_);
    wrong_.insert(wrong_.end(), found.diagnostics.begin(), found.diagnostics.end());
    if (!found.value) return std::nullopt;
    return judged(word, text, found.value->likely.si(), least);
  }

  std::optional<double> read(const char* word, const std::string& text, const Dimension& dimension, const char* noun,
                             const char* examples) {
    if (text.empty()) return std::nullopt;
    const auto found = read_dimensioned(text, dimension, noun, examples);
    if (const auto* error = std::get_if<UnitTextError>(&found)) {
      wrong_.push_back(wrong_option(option_name(word, asker_), *error));
      return std::nullopt;
    }
    return judged(word, text, std::get<double>(found), Least::above_zero);
  }

  std::optional<double> number(const char* word, const std::string& text) {
    if (text.empty()) return std::nullopt;
    const std::optional<double> read = read_decimal(text);
    if (read && *read > 0.0) return read;
    refuse(option_name(word, asker_) + " is a number above zero, but '" + text + "' is written", "write 0.5");
    return std::nullopt;
  }

  void refuse(const std::string& message, const std::string& hint) {
    wrong_.push_back({Severity::error, message, SourceSpan{}, hint, {}});
  }

  [[nodiscard]] Asker asker() const { return asker_; }

 private:
  std::optional<double> judged(const char* word, const std::string& text, double value, Least least) {
    const bool fits = least == Least::any || (least == Least::zero ? value >= 0.0 : value > 0.0);
    if (fits) return value;
    refuse(option_name(word, asker_) + (least == Least::zero ? " is zero or more" : " is above zero") + ", but '" +
               text + "' is written",
           "");
    return std::nullopt;
  }

  Asker asker_;
  std::vector<Diagnostic>& wrong_;
};

std::optional<Between> read_warmer(const std::vector<std::string>& texts, Reader& reader) {
  std::vector<double> values;
  for (const std::string& text : texts) {
    if (const auto value = reader.read<TemperatureDifference>("warmer", text, Least::any)) values.push_back(*value);
  }
  if (values.size() > 2) {
    reader.refuse(option_name("warmer", reader.asker()) + " is given once, or twice for a range",
                  "give the least and the largest difference");
  }
  if (values.empty()) return std::nullopt;
  const auto [low, high] = std::minmax_element(values.begin(), values.end());
  return Between{*low, *high};
}

}  // namespace

Parsed<LineTestOptions> read_line_test_options(const LineTestTexts& texts, Asker asker) {
  Parsed<LineTestOptions> out;
  Reader reader(asker, out.diagnostics);
  LineTestOptions& o = out.value;
  o.product = texts.product;
  o.warmer = read_warmer(texts.warmer, reader);
  o.fuel_temperature = reader.read<Temperature>("fuel_temperature", texts.fuel_temperature, Least::any);
  o.ground_temperature = reader.read<Temperature>("ground_temperature", texts.ground_temperature, Least::any);
  o.time_constant = reader.read<Duration>("time_constant", texts.time_constant, Least::above_zero);
  o.ground = texts.ground;
  if (!o.ground.empty() && o.ground != "damp-sand" && o.ground != "dry-sand") {
    reader.refuse(option_name("ground", asker) + " is not '" + o.ground + "'",
                  "write damp-sand or dry-sand, or give conductivity and heat of the ground");
  }
  o.ground_conductivity = reader.read("ground_conductivity", texts.ground_conductivity, {1, 1, -3, -1},
                                      "a thermal conductivity", "\"1.5 W/m.K\"");
  o.ground_heat =
      reader.read("ground_heat", texts.ground_heat, {1, -1, -2, -1}, "a heat per volume", "\"2000 kJ/m3.K\"");
  o.expansion = reader.read<Expansion>("expansion", texts.expansion, Least::zero);
  o.line_expansion = reader.read<Expansion>("line_expansion", texts.line_expansion, Least::zero);
  o.volume = reader.read<Volume>("volume", texts.volume, Least::above_zero);
  o.compliance = reader.read<Compliance>("compliance", texts.compliance, Least::above_zero);
  o.per_degree =
      reader.read("per_degree", texts.per_degree, {1, -1, -2, -1}, "a pressure per degree", "\"80 psi/degF\"");
  o.vapor = reader.read<Volume>("vapor", texts.vapor, Least::zero);
  o.leak = reader.read<VolumeFlow>("leak", texts.leak, Least::zero);
  o.leak_pressure = reader.read<GaugePressure>("leak_pressure", texts.leak_pressure, Least::above_zero);
  o.exponent = reader.number("exponent", texts.exponent);
  o.pressure = reader.read<GaugePressure>("pressure", texts.pressure, Least::above_zero);
  o.wait = reader.read<Duration>("wait", texts.wait, Least::zero);
  o.duration = reader.read<Duration>("duration", texts.duration, Least::above_zero);
  o.drop = reader.read<PressureDifference>("drop", texts.drop, Least::above_zero);
  o.measured = reader.read<PressureDifference>("measured", texts.measured, Least::any);
  o.find = reader.read<VolumeFlow>("find", texts.find, Least::above_zero);
  o.limit = reader.read<VolumeFlow>("limit", texts.limit, Least::above_zero);
  for (const std::string& text : texts.quiet) {
    if (const auto value = reader.read<Duration>("quiet", text, Least::above_zero)) o.quiet.push_back(*value);
  }
  o.stopped = reader.read<Duration>("stopped", texts.stopped, Least::above_zero);
  return out;
}

}  // namespace forecourse::studies
