#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

/// `read(line, figure)`
template <class Read>
std::vector<FigureAt> each_line_test(const Facts& facts, Read read) {
  return each_line(facts, [&](const site::Line& line) {
    FigureAt out = of_part(line.id.text, line.acceptance ? line.acceptance->where : line.where);
    read(line, out);
    return out;
  });
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
  return each_line_test(facts, [&](const site::Line& line, FigureAt& out) {
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
  return each_line_test(facts, [](const site::Line& line, FigureAt& out) {
    if (line.acceptance && line.acceptance->held)
      out.value = line.acceptance->held->likely.si();
    else
      out.enter = of_test;
  });
}

std::vector<FigureAt> tested(const Facts& facts) {
  return each_line_test(facts, [&](const site::Line& line, FigureAt& out) {
    out = last_tested(facts, line.id.text, out.where, line.acceptance ? line.acceptance->tested : std::nullopt,
                      {site::records::TestKind::line_acceptance, {line.id.text}}, of_test);
  });
}

std::vector<FigureAt> flexible_joints(const Facts& facts) {
  return each_line(facts, [](const site::Line& line) {
    return entered_fact(line.id.text, line.where, line.flexible_joints, "enter flexible_joints of the line");
  });
}

std::vector<FigureAt> bore(const Facts& facts) {
  return each_line(facts, [](const site::Line& line) {
    FigureAt out = of_part(line.id.text, line.where);
    out.value = bore_of(line.pipe);
    if (!out.value) out.enter = "enter bore of the line, or its nominal size";
    return out;
  });
}

std::vector<FigureAt> straight_run(const Facts& facts) {
  return each_line(facts, [](const site::Line& line) {
    return entered_amount(line.id.text, line.where, line.straight_run, "enter straight_run of the line");
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
      fact_figure("line-flexible-joints", "flexible joints of a line", flexible_joints),
      amount_figure<Length>("line-inside-diameter", "inside diameter of a line", "m", bore),
      amount_figure<Length>("line-straight-run", "straight run at a line's change of direction", "m", straight_run),
  };
}

}  // namespace forecourse::checks
