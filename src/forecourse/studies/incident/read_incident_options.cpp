#include "forecourse/studies/incident/read_incident_options.h"

#include <span>

#include "forecourse/base/nearest_word.h"

namespace forecourse::studies {
namespace {

using Problems = std::vector<Diagnostic>;

/// A word that is none of a list, told with the nearest of it.
Diagnostic unknown(const std::string& what, const std::string& word, const std::vector<std::string>& known) {
  const auto nearest = nearest_word(word, std::span<const std::string>(known));
  auto near = nearest ? std::optional<std::string>(*nearest) : std::nullopt;
  std::string all;
  for (const std::string& one : known) {
    all += (all.empty() ? "" : ", ") + one;
    const bool is_part = word.size() > 2 && one.find(word) != std::string::npos;
    if (!near && is_part) near = one;
  }
  return {Severity::error,
          "there is no " + what + " '" + word + "'",
          std::nullopt,
          (near ? "did you mean '" + *near + "'? " : "") + "there are: " + all,
          {}};
}

template <class Q>
void read_into(site::Maybe<Q>& member, std::string_view word, const std::string& text, Asker asker,
               Problems& problems) {
  Parsed<site::Maybe<Q>> read = read_option<Q>(word, text, asker);
  if (read.value) member = read.value;
  problems.insert(problems.end(), read.diagnostics.begin(), read.diagnostics.end());
}

Barrier read_barrier(const std::string& text, Problems& problems) {
  if (const auto found = barrier(text)) return *found;
  problems.push_back(unknown("barrier", text, barrier_words()));
  return Barrier::shear_valve;
}

/// "sump-sensor" or "sump-sensor=3 min".
DeadBarrier read_dead(const std::string& text, Asker asker, Problems& problems) {
  const std::size_t equals = text.find('=');
  const std::size_t before = problems.size();
  DeadBarrier dead{read_barrier(text.substr(0, equals), problems), std::nullopt};
  if (equals == std::string::npos || problems.size() > before) return dead;
  site::Maybe<Duration> time;
  read_into(time, "dead", text.substr(equals + 1), asker, problems);
  if (time) dead.dead_for = time->likely.si();
  return dead;
}

IncidentKind read_kind(const std::string& text, Problems& problems) {
  if (const auto found = incident_kind(text)) return *found;
  problems.push_back(unknown("kind of incident", text, incident_kind_words()));
  return IncidentKind::struck;
}

}  // namespace

std::vector<std::string> incident_kind_words() {
  std::vector<std::string> words;
  for (const IncidentKind kind :
       {IncidentKind::struck, IncidentKind::drive_off, IncidentKind::sump_fire, IncidentKind::crack,
        IncidentKind::line_break, IncidentKind::overfill, IncidentKind::nozzle_left_open}) {
    words.emplace_back(word(kind));
  }
  return words;
}

Parsed<IncidentOptions> read_incident_options(const IncidentTexts& texts, Asker asker) {
  Parsed<IncidentOptions> out;
  IncidentOptions& o = out.value;
  o.kind = read_kind(texts.kind, out.diagnostics);
  o.request.at.text = texts.at;
  o.request.id.text = texts.id;
  o.none_open = texts.open && (texts.open->empty() || *texts.open == std::vector<std::string>{"none"});
  if (texts.open && !o.none_open) {
    for (const std::string& hose : *texts.open) o.request.open.push_back({hose, {}});
  }
  read_into(o.request.stop_at, "stop_at", texts.stop_at, asker, out.diagnostics);
  read_into(o.request.counts_until, "for", texts.counts_for, asker, out.diagnostics);
  read_into(o.request.open_area, "open_area", texts.open_area, asker, out.diagnostics);
  for (const std::string& text : texts.without) o.without.push_back(read_barrier(text, out.diagnostics));
  for (const std::string& text : texts.dead) o.dead.push_back(read_dead(text, asker, out.diagnostics));
  o.runs = texts.runs;
  o.seed = texts.seed;
  return out;
}

}  // namespace forecourse::studies
