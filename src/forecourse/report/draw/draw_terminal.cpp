#include <fmt/format.h>

#include <map>

#include "forecourse/report/draw/draw_report.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

using handover::Drawing;

/// How many parts want each entry.
std::vector<std::pair<std::string, std::string>> not_placed(const Drawing& drawing) {
  std::vector<std::pair<std::string, std::string>> out;
  std::map<std::string, std::vector<std::string>> named;
  for (const handover::NotPlaced& one : drawing.not_placed) {
    auto [found, fresh] = named.try_emplace(one.why);
    if (fresh) out.emplace_back(one.why, "");
    found->second.push_back(one.kind + " " + one.subject);
  }
  for (auto& [why, names] : out) {
    const std::vector<std::string>& all = named[why];
    for (const std::string& name : all) names += (names.empty() ? "" : ", ") + name;
  }
  return out;
}

void tell_zones(const Drawing& drawing, terminal::Page& page) {
  if (drawing.zones.empty() && drawing.zone_gaps.empty()) return;
  page.remark("Classified areas: " +
              (drawing.zones.empty()
                   ? std::string("none drawn, which does not mean that there is none.")
                   : std::to_string(drawing.zones.size()) + " extents by " + drawing.zones.front().clause + "."));
  std::map<std::string, std::string> gaps;
  std::vector<std::string> order;
  for (const handover::ZoneGap& gap : drawing.zone_gaps) {
    auto [found, fresh] = gaps.try_emplace(gap.why);
    if (fresh) order.push_back(gap.why);
    found->second += (found->second.empty() ? "" : ", ") + gap.subject;
  }
  for (const std::string& why : order) page.item("not drawn, " + gaps[why] + ": " + why);
}

}  // namespace

std::string draw_summary(const handover::DrawingSet& set, const terminal::Style& style, const DrawFacts& facts) {
  terminal::Page page(style);
  page.title("Drawings");
  page.paragraph(set.cautions.empty() ? "" : set.cautions.front());
  for (const Drawing& drawing : set.drawings) {
    page.heading(drawing.title);
    const std::size_t here = drawing.marks.size() + drawing.not_placed.size();
    page.remark(fmt::format(
        "{} on {}; {} of {} parts placed{}.", drawing.sheet.words, drawing.sheet.paper, drawing.marks.size(), here,
        drawing.elsewhere.empty() ? "" : fmt::format(", {} more are not on this one", drawing.elsewhere.size())));
    for (const auto& [why, names] : not_placed(drawing)) page.item("not placed, " + names + ": " + why);
    tell_zones(drawing, page);
    if (!style.verbose) continue;
    for (const std::string& note : drawing.notes) page.item(note);
  }
  tell_end({set.version, {}, set.warnings, set.cautions}, site::Display::us,
           style.utf8 ? Glyphs::unicode : Glyphs::ascii, facts.written, page);
  return page.text();
}

}  // namespace forecourse::report
