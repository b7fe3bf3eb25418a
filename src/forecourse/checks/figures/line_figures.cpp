#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

/// A run of which half or more was replaced counts as new from that day.
/// \source [cfr_280, 280.12], as an agency's page tells it
constexpr double replaced_share = 0.5;

std::vector<FigureAt> installed(const Facts& facts) {
  return each_line(facts, [](const site::Line& line) {
    MaybeDay day = line.installed;
    if (line.replaced && !line.replaced_share) {
      day = std::nullopt;
    } else if (line.replaced && line.replaced_share->likely.si() >= replaced_share) {
      day = line.replaced;
    }
    return entered_day(line.id.text, line.where, day, "enter installed, and replaced with replaced_share, of the line");
  });
}

std::vector<FigureAt> double_wall(const Facts& facts) {
  return each_line(facts, [](const site::Line& line) {
    return entered_fact(line.id.text, line.where, line.double_wall, "enter double_wall of the line");
  });
}

std::vector<FigureAt> interstice_alarm(const Facts& facts) {
  return each_line(facts, [](const site::Line& line) {
    return entered_fact(line.id.text, line.where, line.interstice ? line.interstice->alarm : std::nullopt,
                        "enter interstice of the line, with alarm");
  });
}

std::vector<FigureAt> interstice_monitored(const Facts& facts) {
  return each_line(facts, [&](const site::Line& line) {
    return last_looked(facts, line.id.text, line.where, line.interstice ? line.interstice->monitored : std::nullopt,
                       {"interstice", {line.id.text}}, "enter interstice of the line, with monitored");
  });
}

/// What watches the interstices of tanks and lines.
std::vector<FigureAt> interstice_tested(const Facts& facts) {
  std::vector<FigureAt> out;
  const auto add = [&](const site::Name& id, const std::optional<site::Interstice>& interstice) {
    if (!interstice) return;
    out.push_back(last_tested(facts, id.text, interstice->where, interstice->tested,
                              {site::records::TestKind::interstice, {id.text}}, "enter tested of the interstice"));
    if (interstice->watch.text == "none") out.back().exempt = "nothing watches this interstice";
  };
  for (const site::Tank& tank : facts.site.tanks) add(tank.id, tank.interstice);
  for (const site::Line& line : facts.site.lines) add(line.id, line.interstice);
  return out;
}

}  // namespace

std::vector<Figure> line_figures() {
  return {
      day_figure("line-installed", "day on which a line, or at least half of it, was laid", installed),
      fact_figure("line-double-wall", "two walls of a line", double_wall),
      fact_figure("line-interstice-alarm", "a line's interstice is watched all the time and somebody is told",
                  interstice_alarm),
      day_figure("line-interstice-monitored", "last look at a line's interstice", interstice_monitored),
      day_figure("interstice-gear-tested", "last test of what watches an interstice", interstice_tested),
  };
}

}  // namespace forecourse::checks
