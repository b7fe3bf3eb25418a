#include "forecourse/studies/tank/read_tank_options.h"

#include <utility>

namespace forecourse::studies {
namespace {

/// A quantity above zero.
template <class Q>
std::optional<double> positive(const char* word, const std::string& text, Asker asker, std::vector<Diagnostic>& wrong) {
  auto read = read_option<Q>(word, text, asker);
  wrong.insert(wrong.end(), read.diagnostics.begin(), read.diagnostics.end());
  if (!read.value) return std::nullopt;
  const double value = read.value->likely.si();
  if (value > 0.0) return value;
  wrong.push_back({Severity::error,
                   option_name(word, asker) + " is above zero, but '" + text + "' is written",
                   std::nullopt,
                   {},
                   {}});
  return std::nullopt;
}

std::optional<DipAt> place(const std::string& text, Asker asker, std::vector<Diagnostic>& wrong) {
  using Kind = DipAt::Kind;
  if (text.empty()) return std::nullopt;
  if (text == "fill") return DipAt{Kind::fill, 0.0};
  if (text == "gauge") return DipAt{Kind::gauge, 0.0};
  if (text == "pump") return DipAt{Kind::pump, 0.0};
  const auto read = read_quantity(text, Length::kind());
  if (const auto* length = std::get_if<double>(&read); length != nullptr && *length >= 0.0)
    return DipAt{Kind::place, *length};
  wrong.push_back(
      {Severity::error,
       option_name("at", asker) + " is fill, gauge, pump or a length from the low end, but '" + text + "' is written",
       std::nullopt,
       "write \"8 ft\"",
       {}});
  return std::nullopt;
}

}  // namespace

Parsed<TankOptions> read_tank_options(const TankAsked& asked, Asker asker) {
  Parsed<TankOptions> out;
  std::vector<Diagnostic>& wrong = out.diagnostics;
  out.value.tank = asked.tank;
  out.value.depth = positive<Length>("depth", asked.depth, asker, wrong);
  out.value.at = place(asked.at, asker, wrong);
  out.value.step = positive<Length>("step", asked.step, asker, wrong);
  out.value.rate = positive<VolumeFlow>("rate", asked.rate, asker, wrong);
  out.value.share = positive<Ratio>("room", asked.room, asker, wrong);
  for (const std::string& text : asked.draws) {
    if (const auto draw = positive<VolumeFlow>("draw", text, asker, wrong)) out.value.draws.push_back(*draw);
  }
  return out;
}

}  // namespace forecourse::studies
