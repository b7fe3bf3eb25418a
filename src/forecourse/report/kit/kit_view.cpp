#include "forecourse/report/kit/kit_view.h"

#include <fmt/format.h>

#include <array>

namespace forecourse::report {
namespace {

using handover::KitSize;

/// Lengths that run along something are shown in feet or meters, what is measured across in inches or millimeters.
Measure measure_of_length(const std::string& name) {
  constexpr std::array<std::string_view, 3> along{"length", "overhang", "elevation"};
  for (const std::string_view one : along) {
    if (name.ends_with(one) && !name.starts_with("floor") && !name.starts_with("top")) return Measure::length;
  }
  return Measure::bore;
}

std::string value_in_words(const KitSize& size, site::Display display, Glyphs glyphs) {
  const double value = *size.value;
  if (size.unit == "m") return with_unit(measure_of_length(size.name), display, value, glyphs);
  if (size.unit == "m3") return with_unit(Measure::volume, display, value, glyphs);
  if (size.unit == "m3/s")
    return with_unit(size.name == "detects" ? Measure::leak : Measure::flow, display, value, glyphs);
  if (size.unit == "Pa")
    return with_unit(size.of_vapor ? Measure::ullage_pressure : Measure::pressure, display, value, glyphs);
  if (size.unit == "K") return with_unit(Measure::temperature, display, value, glyphs);
  if (size.unit == "N") return with_unit(Measure::force, display, value, glyphs);
  if (size.unit == "N m") return with_unit(Measure::moment, display, value, glyphs);
  if (size.unit == "share") return fmt::format("{} %", number(100.0 * value, 0, glyphs));
  return size.unit == "W" ? number(value, 0, glyphs) + " W" : fmt::format("{:g}", value);
}

/// Of the length and the width of one thing, such as a sump's floor, its name; else empty.
std::string both_ways(const KitSize& length, const KitSize& width) {
  constexpr std::string_view along = " length";
  if (!length.name.ends_with(along)) return {};
  const std::string of = length.name.substr(0, length.name.size() - along.size());
  return width.name == of + " width" && length.value && width.value ? of : std::string();
}

}  // namespace

std::string size_in_words(const KitSize& size, site::Display display, Glyphs glyphs) {
  return size.name + " " + (size.value ? value_in_words(size, display, glyphs) : size.text);
}

std::string sizes_in_words(const std::vector<KitSize>& sizes, site::Display display, Glyphs glyphs) {
  std::string out;
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    if (!out.empty()) out += ", ";
    const std::string of = i + 1 < sizes.size() ? both_ways(sizes[i], sizes[i + 1]) : std::string();
    if (of.empty()) {
      out += size_in_words(sizes[i], display, glyphs);
    } else {
      out +=
          of + " " + value_in_words(sizes[i], display, glyphs) + " by " + value_in_words(sizes[i + 1], display, glyphs);
      ++i;
    }
  }
  return out.empty() ? "not entered" : out;
}

std::string needed_in_words(const handover::RatingNeeded& needed, site::Display display, Glyphs glyphs) {
  if (needed.bears == handover::Bears::nothing) return {};
  if (!needed.pressure_gauge) return "not determined";
  const bool vapor = needed.bears == handover::Bears::vapor;
  const Measure measure = vapor ? Measure::ullage_pressure : Measure::pressure;
  std::string out = with_unit(measure, display, *needed.pressure_gauge, glyphs);
  if (needed.vacuum) out += ", vacuum " + with_unit(measure, display, *needed.vacuum, glyphs);
  return out;
}

const char* word(site::ClauseSeen seen) {
  switch (seen) {
    case site::ClauseSeen::text:
      return "text seen";
    case site::ClauseSeen::older_text:
      return "older text seen, later not";
    case site::ClauseSeen::told:
      return "told by another text";
    case site::ClauseSeen::memory:
      break;
  }
  return "from memory, not verified";
}

std::string standards_in_words(const std::vector<handover::KitStandard>& standards) {
  std::string out;
  for (const handover::KitStandard& one : standards)
    out += fmt::format("{}{} ({})", out.empty() ? "" : "; ", one.standard, word(one.seen));
  return out.empty() ? "none read" : out;
}

std::string kinds_in_words(const handover::Compatibility& compatibility) {
  std::string out;
  for (const std::string& kind : compatibility.kinds) out += (out.empty() ? "" : ", ") + kind;
  return out;
}

std::string compatibility_in_words(const handover::Compatibility& compatibility) {
  if (compatibility.kinds.empty()) return {};
  const char* proof =
      compatibility.high_blend ? ", proof is asked for by 40 CFR 280.32(b)(1), as told by another text" : "";
  return kinds_in_words(compatibility) + ": " + word(compatibility.fit) + proof;
}

std::string count_in_words(const std::optional<int>& count) { return count ? std::to_string(*count) : "not entered"; }

std::string total_in_words(const handover::PipeTotal& pipe, const std::string& told) {
  if (pipe.runs_without_length == pipe.runs) return "not entered";
  return pipe.runs_without_length > 0 ? "at least " + told : told;
}

std::string runs_in_words(const handover::PipeTotal& pipe) {
  const std::string runs = std::to_string(pipe.runs);
  const bool some = pipe.runs_without_length > 0 && pipe.runs_without_length < pipe.runs;
  return !some ? runs : fmt::format("{}, {} without a length", runs, pipe.runs_without_length);
}

std::vector<std::string> not_told_in_words(const handover::Kit& kit, site::Display display, Glyphs glyphs) {
  const auto told = [&](double length) { return with_unit(Measure::length, display, length, glyphs); };
  std::vector<std::string> out;
  for (const handover::PipeTotal& pipe : kit.pipes) {
    if (pipe.length_low < pipe.length_high)
      out.push_back(fmt::format("length of {}: between {} and {}, ordered by the likely {}", pipe.what,
                                told(pipe.length_low), told(pipe.length_high), told(pipe.length)));
  }
  out.insert(out.end(), kit.not_told.begin(), kit.not_told.end());
  return out;
}

std::string amount_in_words(const handover::KitRow& row, site::Display display, Glyphs glyphs) {
  if (!row.is_pipe) return count_in_words(row.count);
  const std::string runs = fmt::format("{} run{}", row.count.value_or(0), row.count.value_or(0) == 1 ? "" : "s");
  if (!row.length) return runs + ", length not entered";
  std::string known = with_unit(Measure::length, display, *row.length, glyphs) + " in " + runs;
  if (row.runs_without_length == 0) return known;
  return fmt::format("at least {}, {} without a length", known, row.runs_without_length);
}

std::string subjects_in_words(const std::vector<std::string>& subjects, std::size_t most) {
  std::string out;
  for (std::size_t i = 0; i < subjects.size() && i < most; ++i) out += (out.empty() ? "" : ", ") + subjects[i];
  if (subjects.size() > most) out += fmt::format(" and {} more", subjects.size() - most);
  return out;
}

}  // namespace forecourse::report
