#include <algorithm>
#include <map>

#include "forecourse/report/compare/compare_view.h"
#include "forecourse/report/flow/flow_view.h"

namespace forecourse::report {
namespace {

using decide::Topic;
using decide::Unchanged;

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (const std::string& word : words) out += (out.empty() ? "" : ", ") + word;
  return out;
}

/// Topics that are told as one where all of them are unchanged.
struct TopicFamily {
  const char* words;
  std::vector<Topic> topics;
};

const std::vector<TopicFamily>& families() {
  static const std::vector<TopicFamily> all{
      {"lengths of pipe", {Topic::line_length, Topic::pipe_of_bore, Topic::pipe_total}},
      {"joints", {Topic::joints_at, Topic::joints_total}}};
  return all;
}

const char* alone_words(Topic topic) {
  switch (topic) {
    case Topic::line_length:
      return "length of a line";
    case Topic::joints_at:
      return "joints at a place";
    default:
      return words_of(topic);
  }
}

bool is_whole(const std::vector<Unchanged>& unchanged, Topic topic) {
  return std::any_of(unchanged.begin(), unchanged.end(),
                     [&](const Unchanged& u) { return u.topic == topic && u.whole_topic; });
}

/// The topic that says it all where it is unchanged: the flow of every hose for other flows, the rise of a pump for
/// its discharge.
std::optional<Topic> implied_by(Topic topic) {
  if (topic == Topic::slowest_flow || topic == Topic::total_flow || topic == Topic::spread) return Topic::hose_flow;
  if (topic == Topic::pump_discharge) return Topic::pump_rise;
  return std::nullopt;
}

bool is_implied(const std::vector<Unchanged>& unchanged, const Unchanged& one) {
  const auto by = implied_by(one.topic);
  return by && std::any_of(unchanged.begin(), unchanged.end(),
                           [&](const Unchanged& u) { return u.topic == *by && u.state == one.state && u.whole_topic; });
}

/// Pipings of which no row differs, if some row of another does.
std::vector<std::string> untouched_systems(const decide::Comparison& c) {
  std::map<std::string, bool> differs;
  for (const decide::DifferenceRow& row : c.rows) {
    if (!row.system.empty()) differs[row.system] = differs[row.system] || row.differs;
  }
  std::vector<std::string> out;
  for (const auto& [system, any] : differs) {
    if (!any) out.push_back(system);
  }
  return out;
}

/// A topic with the states in which none of its rows differs: "flow of a hose alone", "..., one each and all open".
std::vector<std::string> topics_in_words(const decide::Comparison& c) {
  std::vector<std::string> out;
  std::vector<Topic> told;
  for (const TopicFamily& family : families()) {
    const bool whole = std::all_of(family.topics.begin(), family.topics.end(),
                                   [&](Topic topic) { return is_whole(c.unchanged, topic); });
    if (!whole) continue;
    out.emplace_back(family.words);
    told.insert(told.end(), family.topics.begin(), family.topics.end());
  }
  for (const Unchanged& u : c.unchanged) {
    if (!u.whole_topic || is_implied(c.unchanged, u)) continue;
    if (std::find(told.begin(), told.end(), u.topic) != told.end()) continue;
    told.push_back(u.topic);
    std::vector<std::string> states;
    for (const Unchanged& other : c.unchanged) {
      const std::string state = short_state(other.state);
      const bool meant =
          other.topic == u.topic && other.whole_topic && !state.empty() && !is_implied(c.unchanged, other);
      if (meant && std::find(states.begin(), states.end(), state) == states.end()) states.push_back(state);
    }
    out.push_back(alone_words(u.topic) + (states.empty() ? std::string() : ", " + joined(states)));
  }
  return out;
}

const char* state_word(const std::optional<checks::Finding>& finding) {
  return finding ? checks::word(finding->state) : "not asked";
}

}  // namespace

std::vector<std::string> unchanged_in_words(const decide::Comparison& comparison) {
  const bool any = std::any_of(comparison.rows.begin(), comparison.rows.end(), [](const auto& r) { return r.differs; });
  if (!any) return {"any figure"};
  std::vector<std::string> out = topics_in_words(comparison);
  for (const std::string& system : untouched_systems(comparison)) out.push_back("anything of " + system);
  return out;
}

std::string only_in_words(const char* which, const std::vector<decide::OnePart>& parts) {
  if (parts.empty()) return {};
  std::vector<std::string> words;
  words.reserve(parts.size());
  for (const decide::OnePart& part : parts) words.push_back(part.kind + " " + part.id);
  return std::string("Only in ") + which + ": " + joined(words) + ".";
}

std::string in_words(const decide::FindingChange& change) {
  const checks::Finding& one = change.a ? *change.a : *change.b;
  return one.subject + ", " + one.requirement + ": " + state_word(change.a) + " in A, " + state_word(change.b) +
         " in B" + (one.clause.empty() ? "" : "; " + one.clause) + ".";
}

std::string in_words(const decide::DeadHead& dead_head) {
  const char* where = dead_head.a && dead_head.b ? "in A and in B" : dead_head.a ? "in A" : "in B";
  return "With " + short_state(dead_head.state) + ", " + dead_head.pump + " runs and delivers nothing " + where + ".";
}

std::vector<std::string> undetermined_in_words(const decide::Comparison& comparison) {
  const std::vector<std::string> of_a = not_determined(comparison.a.flow);
  const std::vector<std::string> of_b = not_determined(comparison.b.flow);
  const auto has = [](const std::vector<std::string>& all, const std::string& one) {
    return std::find(all.begin(), all.end(), one) != all.end();
  };
  std::vector<std::string> out;
  out.reserve(of_a.size());
  for (const std::string& reason : of_a) out.push_back((has(of_b, reason) ? "A and B: " : "A: ") + reason);
  for (const std::string& reason : of_b) {
    if (!has(of_a, reason)) out.push_back("B: " + reason);
  }
  return out;
}

std::vector<std::string> warnings_in_words(const decide::Comparison& comparison, const std::vector<SourceText>& texts) {
  std::vector<std::string> out;
  std::vector<std::string> told;
  for (const decide::Alternative* one : {&comparison.a, &comparison.b}) {
    for (const Diagnostic& d : one->flow.warnings) {
      std::string text = d.message + (d.hint.empty() ? "" : "; " + d.hint);
      if (std::find(told.begin(), told.end(), text) != told.end()) continue;
      told.push_back(text);
      if (d.where && d.where->text < texts.size()) {
        const LineColumn at = line_column(texts[d.where->text].text, d.where->begin);
        text.insert(0, texts[d.where->text].name + ", line " + std::to_string(at.line) + ": ");
      }
      out.push_back(std::move(text));
    }
  }
  return out;
}

}  // namespace forecourse::report
