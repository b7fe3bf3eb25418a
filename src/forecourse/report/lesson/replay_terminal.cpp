#include <algorithm>
#include <cstddef>

#include "forecourse/report/lesson/amounts.h"
#include "forecourse/report/lesson/replay_report.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

using lesson::Replay;
using lesson::Scene;
using lesson::SceneValue;

std::string value_of(const Scene& scene, const std::string& label, site::Display display, Glyphs glyphs) {
  const auto found =
      std::find_if(scene.told.begin(), scene.told.end(), [&](const SceneValue& one) { return one.label == label; });
  if (found == scene.told.end()) return {};
  if (found->value) return shown(found->value, found->quantity, display, glyphs);
  return found->quantity == lesson::Quantity::time ? "never" : "not determined";
}

/// What both tell, a row for each label.
terminal::Table told_table(const Replay& replay, site::Display display, Glyphs glyphs) {
  terminal::Table out{{{"", false, true}}, {}};
  std::vector<std::string> labels;
  for (const Scene& scene : replay.scenes) {
    out.columns.push_back({scene.name, true, false});
    for (const SceneValue& one : scene.told) {
      if (std::find(labels.begin(), labels.end(), one.label) == labels.end()) labels.push_back(one.label);
    }
  }
  for (const std::string& label : labels) {
    std::vector<std::string> row{label};
    for (const Scene& scene : replay.scenes) row.push_back(value_of(scene, label, display, glyphs));
    out.rows.push_back(std::move(row));
  }
  return out;
}

/// Events of both in the order of time, each in the column of its scene.
terminal::Table event_table(const Replay& replay, Glyphs glyphs) {
  terminal::Table out{{{"After", true, false}}, {}};
  std::vector<double> times;
  std::size_t most = 0;
  for (const Scene& scene : replay.scenes) {
    out.columns.push_back({scene.name, false, true});
    most += scene.events.size();
  }
  out.rows.reserve(most);
  for (std::size_t s = 0; s < replay.scenes.size(); ++s) {
    for (const lesson::SceneEvent& event : replay.scenes[s].events) {
      std::vector<std::string> row(replay.scenes.size() + 1);
      row.front() = time_span(event.time, glyphs);
      row[s + 1] = event.words;
      const auto at = std::upper_bound(times.begin(), times.end(), event.time) - times.begin();
      times.insert(times.begin() + at, event.time);
      out.rows.insert(out.rows.begin() + at, std::move(row));
    }
  }
  return out;
}

/// What nobody entered and no source gives, of both scenes.
void tell_rests_on(const Replay& replay, terminal::Page& page) {
  std::vector<std::string> told;
  for (const Scene& scene : replay.scenes) {
    for (const std::string& one : scene.rests_on) {
      if (std::find(told.begin(), told.end(), one) == told.end()) told.push_back(one);
    }
  }
  if (told.empty()) return;
  page.heading("Rests on");
  for (const std::string& one : told) page.item(one);
}

}  // namespace

std::string replay_summary(const Replay& replay, const std::vector<Diagnostic>& warnings, const site::Site& site,
                           const terminal::Style& style, const ReportFacts& facts) {
  const Glyphs glyphs = style.utf8 ? Glyphs::unicode : Glyphs::ascii;
  terminal::Page page(style);
  page.title((site.name.empty() ? "Station without a name" : site.name.text) + ": " + replay.title +
             (replay.at.empty() ? "" : ", at " + replay.at));
  if (!replay.problem.empty()) {
    page.paragraph("This station cannot show it: " + replay.problem + ".");
    return page.text();
  }
  if (!replay.caution.empty()) page.notice("Caution", replay.caution);
  page.table(told_table(replay, site.display, glyphs));
  tell_rests_on(replay, page);
  page.heading("What happens");
  page.table(event_table(replay, glyphs));
  tell_end({FORECOURSE_VERSION, {}, warnings, replay_cautions(replay)}, site.display, glyphs, facts.written, page);
  return page.text();
}

}  // namespace forecourse::report
