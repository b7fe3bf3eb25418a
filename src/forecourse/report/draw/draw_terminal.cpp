#include <fmt/format.h>

#include "forecourse/handover/drawings/lists.h"
#include "forecourse/report/draw/draw_report.h"
#include "forecourse/report/study_page.h"
#include "forecourse/report/terminal/page.h"

namespace forecourse::report {
namespace {

using handover::Drawing;

void tell_zones(const Drawing& drawing, terminal::Page& page) {
  if (drawing.zones.empty() && drawing.zone_gaps.empty()) return;
  page.remark("Classified areas: " +
              (drawing.zones.empty()
                   ? std::string("none drawn, which does not mean that there is none.")
                   : std::to_string(drawing.zones.size()) + " extents by " + drawing.zones.front().clause + "."));
  for (const std::string& gap : handover::zone_gaps_in_words(drawing)) page.item("not drawn, " + gap);
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
    for (const std::string& line : handover::not_placed_in_words(drawing)) page.item("not placed, " + line);
    tell_zones(drawing, page);
    if (!style.verbose) continue;
    for (const std::string& note : drawing.notes) page.item(note);
  }
  tell_end({set.version, {}, set.warnings, set.cautions}, site::Display::us,
           style.utf8 ? Glyphs::unicode : Glyphs::ascii, facts.written, page);
  return page.text();
}

}  // namespace forecourse::report
