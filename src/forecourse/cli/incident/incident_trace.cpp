#include "forecourse/cli/incident/incident_trace.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/units.h"

namespace forecourse::cli {
namespace {

using Json = nlohmann::ordered_json;

void tell(const std::string& path, const std::string& wrong, const std::string& hint) {
  print_error("error: '" + path + "' " + wrong + "\n  hint: " + hint + "\n");
}

std::string text_of(const Json& json, const char* key) {
  return json.contains(key) && json[key].is_string() ? json[key].get<std::string>() : std::string();
}

template <class Item, class ToItem>
void read_list(const Json& json, const char* key, std::vector<Item>& items, ToItem to_item) {
  if (!json.contains(key) || !json[key].is_array()) return;
  for (const Json& one : json[key]) items.push_back(to_item(one));
}

/// A quantity written as low, likely and high.
template <class Q>
void read_spread(const Json& json, const char* key, site::Maybe<Q>& member) {
  if (!json.contains(key) || !json[key].is_object()) return;
  const auto value = [&](const char* which) { return Q::from_si(json[key].at(which).template get<double>()); };
  member = site::Entered<Q>{value("likely"), value("low"), value("high"), {}};
}

studies::Barrier barrier_of(const Json& json) {
  return studies::barrier(json.get<std::string>()).value_or(studies::Barrier::shear_valve);
}

studies::DeadBarrier dead_of(const Json& json) {
  studies::DeadBarrier dead{barrier_of(json.at("barrier")), {}};
  if (json.at("for_s").is_number()) dead.dead_for = json.at("for_s").get<double>();
  return dead;
}

void read_asked(const Json& json, IncidentTrace& trace) {
  studies::IncidentOptions& o = trace.asked;
  o.request.id.text = text_of(json, "id");
  o.request.at.text = text_of(json, "at");
  read_list(json, "open", o.request.open, [](const Json& one) { return site::Name{one.get<std::string>(), {}}; });
  o.none_open = json.contains("open") && json["open"].is_array() && json["open"].empty();
  read_spread(json, "stop_at_s", o.request.stop_at);
  read_spread(json, "counts_until_s", o.request.counts_until);
  read_spread(json, "open_area_m2", o.request.open_area);
  read_list(json, "without", o.without, barrier_of);
  read_list(json, "dead", o.dead, dead_of);
  o.runs = json.value("runs", std::size_t{0});
  o.seed = json.value("seed", std::uint64_t{1});
  if (const std::string on = text_of(json, "on"); !on.empty()) o.today = day_of(on);
  read_list(json, "set", trace.sets, [](const Json& one) { return one.get<std::string>(); });
}

/// The first line of the event lists that is not the same in both.
std::string first_difference(const Json& before, const Json& now) {
  const Json& a = before.at("events");
  const Json& b = now.at("events");
  for (std::size_t i = 0; i < std::max(a.size(), b.size()); ++i) {
    if (i >= a.size() || i >= b.size()) return "one event list ends after line " + std::to_string(i);
    if (a[i] == b[i]) continue;
    return "from line " + std::to_string(i + 1) + " of the events on, after " +
           report::time_span(b[i].at("time_s").get<double>(), report::Glyphs::ascii) + ": " + text_of(b[i], "what");
  }
  return "the events are the same, steps between them are not";
}

/// Whether a run is that of before.
bool compare_run(const Json& before, const Json& now) {
  const std::string name = text_of(now, "name");
  if (text_of(before, "name") == name && text_of(before, "hash") == text_of(now, "hash")) {
    print("the same: " + name + "\n");
    return true;
  }
  print("differs:  " + name + "\n          " + first_difference(before, now) + "\n");
  return false;
}

}  // namespace

std::optional<IncidentTrace> read_trace(const std::string& path, studies::IncidentKind kind) {
  std::string text;
  if (!read_file(path, text)) return std::nullopt;
  const char* hint = "give the .json that --out has written";
  IncidentTrace trace;
  trace.path = path;
  try {
    const Json json = Json::parse(text);
    read_asked(json.at("options"), trace);
    trace.result = json.at("result").dump();
    const std::string of = text_of(json.at("options"), "kind");
    if (json.at("result").at("runs").empty()) {
      tell(path, "holds no runs of an incident", hint);
      return std::nullopt;
    }
    if (of != studies::word(kind)) {
      tell(path, "is of the kind '" + of + "', not '" + studies::word(kind) + "'", "give the kind of the trace");
      return std::nullopt;
    }
  } catch (const Json::exception&) {
    tell(path, "holds no runs of an incident", hint);
    return std::nullopt;
  }
  return trace;
}

void fill(studies::IncidentOptions& options, const IncidentTrace& trace) {
  const studies::IncidentOptions& t = trace.asked;
  if (options.request.id.empty()) options.request.id = t.request.id;
  if (options.request.at.empty()) options.request.at = t.request.at;
  if (options.request.open.empty() && !options.none_open) {
    options.request.open = t.request.open;
    options.none_open = t.none_open;
  }
  if (!options.request.stop_at) options.request.stop_at = t.request.stop_at;
  if (!options.request.counts_until) options.request.counts_until = t.request.counts_until;
  if (!options.request.open_area) options.request.open_area = t.request.open_area;
  if (options.without.empty()) options.without = t.without;
  if (options.dead.empty()) options.dead = t.dead;
  if (t.today) options.today = t.today;
  if (options.runs == 0) {
    options.runs = t.runs;
    options.seed = t.seed;
  }
}

Exit compare_with(const IncidentTrace& trace, const studies::IncidentResult& result) {
  const Json now = report::incident_document(result)["result"];
  const Json result_before = Json::parse(trace.result);
  const Json& before = result_before.at("runs");
  bool same = before.size() == now["runs"].size();
  for (std::size_t i = 0; i < std::min(before.size(), now["runs"].size()); ++i) {
    same = compare_run(before[i], now["runs"][i]) && same;
  }
  if (now.contains("spread") && !now["spread"].is_null()) {
    const bool equal = result_before.value("spread", Json()) == now["spread"];
    print((equal ? "the same: " : "differs:  ") + std::to_string(result.spread->runs) + " runs with drawn inputs\n");
    same = same && equal;
  }
  print(same ? "Every run is the same, event by event.\n"
             : "Runs differ: another site file, other options, or another build.\n");
  return same ? Exit::fine : Exit::falls_short;
}

}  // namespace forecourse::cli
