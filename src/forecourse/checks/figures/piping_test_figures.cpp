#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"

namespace forecourse::checks {
namespace {

template <class Read>
std::vector<FigureAt> each_line(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  for (const site::Line& line : facts.site.lines) {
    out.push_back(of_part(line.id.text, line.acceptance ? line.acceptance->where : line.where));
    read(line, out.back());
  }
  return out;
}

const char* const of_test = "enter acceptance = { kind, pressure, greatest, held, tested } of the line";

/// What is to be expected in use: as entered, else the pressure that the line holds, from its study [Pa gauge].
std::optional<double> greatest(const Facts& facts, const site::Line& line) {
  if (line.acceptance->greatest) return line.acceptance->greatest->likely.si();
  if (facts.line_test == nullptr) return std::nullopt;
  for (const studies::LineTest& told : facts.line_test->lines) {
    if (std::find(told.lines.begin(), told.lines.end(), line.id.text) != told.lines.end()) return told.held;
  }
  return std::nullopt;
}

/// With its own limit, `limit(kind, greatest)`.
template <class Limit>
std::vector<FigureAt> test_pressure(const Facts& facts, Limit limit) {
  return each_line(facts, [&](const site::Line& line, FigureAt& out) {
    out.enter = of_test;
    if (!line.acceptance || !line.acceptance->pressure) return;
    const std::optional<double> most = greatest(facts, line);
    if (!most || line.acceptance->kind.empty()) return;
    out.value = line.acceptance->pressure->likely.si();
    out.at_least = limit(line.acceptance->kind.text, *most);
  });
}

/// \source [ifc_2018, 5703.6.3]
std::vector<FigureAt> share_of_greatest(const Facts& facts) {
  return test_pressure(facts, [](const std::string& kind, double most) {
    return std::max((kind == "hydrostatic" ? 1.5 : 1.1) * most, to_si(5.0, "psi"));
  });
}

/// \source [osha_1910_106, (g)(3)(v)(f)]
std::vector<FigureAt> at_greatest(const Facts& facts) {
  return test_pressure(facts, [](const std::string&, double most) { return most; });
}

std::vector<FigureAt> held_for(const Facts& facts) {
  return each_line(facts, [](const site::Line& line, FigureAt& out) {
    if (line.acceptance && line.acceptance->held)
      out.value = line.acceptance->held->likely.si();
    else
      out.enter = of_test;
  });
}

std::vector<FigureAt> tested(const Facts& facts) {
  return each_line(facts, [](const site::Line& line, FigureAt& out) {
    if (line.acceptance && line.acceptance->tested)
      out.day = line.acceptance->tested;
    else
      out.enter = of_test;
  });
}

template <site::Fact site::Line::*Member>
std::vector<FigureAt> of_line(const Facts& facts) {
  return each_line(facts, [](const site::Line& line, FigureAt& out) {
    out.fact = line.*Member;
    if (!out.fact) out.enter = "enter flexible_joints and fiberglass of the line";
  });
}

std::vector<FigureAt> bore(const Facts& facts) {
  return each_line(facts, [](const site::Line& line, FigureAt& out) {
    if (line.pipe.bore)
      out.value = line.pipe.bore->likely.si();
    else
      out.enter = "enter bore of the line";
  });
}

std::vector<FigureAt> straight_run(const Facts& facts) {
  return each_line(facts, [](const site::Line& line, FigureAt& out) {
    if (line.straight_run)
      out.value = line.straight_run->likely.si();
    else
      out.enter = "enter straight_run of the line";
  });
}

}  // namespace

std::vector<Figure> piping_test_figures() {
  return {
      amount_figure<GaugePressure>("line-acceptance-pressure", "pressure of a new line's test, by its kind", "Pa",
                                   share_of_greatest),
      amount_figure<GaugePressure>("line-acceptance-operating", "pressure of a line's test, by that in use", "Pa",
                                   at_greatest),
      amount_figure<Duration>("line-acceptance-time", "time for which a new line's test was held", "s", held_for),
      day_figure("line-acceptance-tested", "last such test of a line", tested),
      fact_figure("line-flexible-joints", "flexible joints of a line", of_line<&site::Line::flexible_joints>),
      fact_figure("line-fiberglass", "a line of reinforced plastic", of_line<&site::Line::fiberglass>),
      amount_figure<Length>("line-inside-diameter", "inside diameter of a line", "m", bore),
      amount_figure<Length>("line-straight-run", "straight run at a line's change of direction", "m", straight_run),
  };
}

}  // namespace forecourse::checks
