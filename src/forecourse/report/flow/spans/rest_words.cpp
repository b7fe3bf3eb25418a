#include "forecourse/report/flow/spans/rest_words.h"

#include <algorithm>
#include <optional>

namespace forecourse::report {
namespace {

using studies::FirstFlow;
using studies::LineAtRest;
using studies::RestHose;
using studies::RestPlace;

/// Least and most of what is known.
struct Ends {
  std::optional<double> least;
  std::optional<double> most;
  std::size_t known = 0;

  void add(const std::optional<double>& value) {
    if (!value) return;
    ++known;
    least = std::min(least.value_or(*value), *value);
    most = std::max(most.value_or(*value), *value);
  }
};

template <class Show>
std::string words(const Ends& ends, Show show) {
  if (!ends.least) return {};
  const std::string least = show(*ends.least);
  const std::string most = show(*ends.most);
  return least == most ? least : least + " to " + most;
}

std::string pressures(const LineAtRest& line, std::optional<double> RestPlace::*gauge, site::Display display,
                      Glyphs glyphs) {
  Ends ends;
  for (const RestPlace& place : line.places) ends.add(place.*gauge);
  return words(ends, [&](double si) { return number(Measure::pressure, display, si, glyphs); });
}

/// Reasons of the hoses, none twice.
std::string reasons(const LineAtRest& line, FirstFlow RestHose::*state) {
  std::vector<std::string> seen;
  std::string out;
  for (const RestHose& hose : line.hoses) {
    const std::string& reason = (hose.*state).reason;
    if (reason.empty() || std::find(seen.begin(), seen.end(), reason) != seen.end()) continue;
    seen.push_back(reason);
    out += (out.empty() ? "" : "; ") + reason;
  }
  return out;
}

RestRow row(const LineAtRest& line, const char* name, FirstFlow RestHose::*state, Glyphs glyphs) {
  Ends ends;
  Ends open_at_once;
  for (const RestHose& hose : line.hoses) {
    ends.add((hose.*state).time);
    open_at_once.add((hose.*state).without_detector);
  }
  const auto seconds = [&](double time) { return number(time, time > 0.0 && time < 0.095 ? 2 : 1, glyphs); };
  RestRow out{name, {}, words(ends, seconds), reasons(line, state)};
  if (ends.known > 0 && ends.known < line.hoses.size()) {
    out.times += " (" + std::to_string(ends.known) + " of " + std::to_string(line.hoses.size()) + " hoses)";
  }
  if (ends.known == 0 && open_at_once.known > 0) {
    out.reason += "; were it open at once, " + words(open_at_once, seconds) + " s";
  }
  return out;
}

}  // namespace

std::vector<RestRow> rest_rows(const LineAtRest& line, site::Display display, Glyphs glyphs) {
  if (!line.reason.empty()) return {};
  std::vector<RestRow> rows{row(line, "held", &RestHose::held, glyphs),
                            row(line, "decayed", &RestHose::decayed, glyphs),
                            row(line, "empty", &RestHose::empty, glyphs)};
  rows[0].pressures = pressures(line, &RestPlace::held_gauge, display, glyphs);
  rows[1].pressures = pressures(line, &RestPlace::decayed_gauge, display, glyphs);
  return rows;
}

std::string held_in_words(const LineAtRest& line, site::Display display, Glyphs glyphs) {
  std::string out = line.held_pressure
                        ? "Held at " + with_unit(Measure::pressure, display, *line.held_pressure, glyphs) +
                              " gauge, at the height of the liquid, by the " + line.held_by + "."
                        : "Held by " + line.held_by + ".";
  const bool below = std::any_of(line.places.begin(), line.places.end(),
                                 [](const RestPlace& place) { return place.below_atmosphere; });
  if (below) {
    out +=
        " Decayed, places above the liquid stand below the air's pressure: vapor may form there, and air may come "
        "in where the line is not tight.";
  }
  return out;
}

std::string rest_places() {
  return "Pressures are the lowest to the highest of the places along the line and of the nozzles, each at its own "
         "height.";
}

std::string detector_in_words(const LineAtRest& line, site::Display display, Glyphs glyphs) {
  std::string out;
  if (line.opening_time) out = "opens after " + number(*line.opening_time, 1, glyphs) + " s";
  if (line.restricted) {
    out += (out.empty() ? "lets through " : "; until then it lets through ") +
           with_unit(Measure::flow, display, *line.restricted, glyphs);
  }
  if (!line.detector_note.empty()) out += (out.empty() ? "" : "; ") + line.detector_note;
  return out.empty() ? out : "Leak detector: " + out + ".";
}

}  // namespace forecourse::report
