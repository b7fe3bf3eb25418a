#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "forecourse/report/containment/sumps_view.h"
#include "forecourse/report/drawing/plan_view.h"
#include "forecourse/report/drawing/section_view.h"
#include "forecourse/report/flow/flow_html_course.h"
#include "forecourse/report/flow/ladder/ladder_html.h"
#include "forecourse/report/incident/incident_scene.h"
#include "forecourse/server/answers/wants/containment_request.h"
#include "forecourse/server/answers/wants/drawing_want.h"
#include "forecourse/server/answers/wants/flow_request.h"
#include "forecourse/server/answers/wants/ground_drawings.h"
#include "forecourse/server/answers/wants/incident_request.h"
#include "forecourse/server/answers/wants/opened_site.h"
#include "forecourse/server/answers/wants/study_answers.h"

namespace forecourse::server {
namespace {

using report::Json;
using studies::HoseFlow;
using studies::SystemFlow;

/// The course to one hose of a state.
struct Course {
  const SystemFlow* system = nullptr;
  const HoseFlow* hose = nullptr;
  bool heights_known = false;
};

const HoseFlow* hose_of(const SystemFlow& system, const std::string& id) {
  if (id.empty()) return report::slowest(system);
  const auto found =
      std::find_if(system.hoses.begin(), system.hoses.end(), [&](const HoseFlow& h) { return h.id == id; });
  return found == system.hoses.end() ? nullptr : &*found;
}

bool heights_known(const studies::FlowResult& result, const std::string& system) {
  const auto found = std::find_if(result.systems.begin(), result.systems.end(),
                                  [&](const studies::SystemSummary& s) { return s.id == system; });
  return found != result.systems.end() && found->elevations_known;
}

/// The course to the hose asked for, else to the slowest open one of the product.
Course course_of(const studies::FlowResult& result, const DrawingWant& want) {
  for (const SystemFlow& system : result.states.front().systems) {
    if (!want.product.empty() && system.product != want.product) continue;
    const HoseFlow* hose = hose_of(system, want.hose);
    if (hose != nullptr && hose->grade_line.size() > 1) return {&system, hose, heights_known(result, system.system)};
  }
  return {};
}

Drawn section(const site::Site& site, const Course& course, const DrawingWant& want) {
  const report::drawing::Section drawn =
      report::drawing::section_of(site, *course.system, *course.hose, site.display, course.heights_known, want.prefix);
  return {draw(drawn), report::drawing::remarks(drawn)};
}

Drawn grade_line(const site::Site& site, const Course& course, const DrawingWant& want) {
  report::svg::GradeChart chart =
      report::grade_chart(*course.hose, site, course.system->product, course.heights_known, want.prefix);
  chart.width = want.width;
  return {draw(chart), {report::grade_note(*course.hose, site.display, course.heights_known)}};
}

Drawn budget(const site::Site& site, const Course& course, const DrawingWant& want) {
  const report::ShownBudget shown = report::shown_budget(*course.hose, site.display);
  report::svg::BudgetChart chart = report::budget_chart(*course.hose, shown, site.display, want.prefix);
  chart.width = want.width;
  return {draw(chart), {"Each bar starts where the one above it ended."}};
}

Drawn plan(const site::Site& site, const studies::FlowResult& result, const DrawingWant& want) {
  return {draw(report::drawing::plan_of(site, result.states.front(), want.prefix)), report::drawing::plan_remarks(site),
          "enter the positions of two places or more"};
}

/// Whether a hose of a group gives a product. Blended hoses tie systems of several products to one group.
bool gives(const report::LadderGroup& group, const studies::FlowResult& result, const std::string& product) {
  const std::vector<std::string>& hoses = group.worst->steps.back().hoses;
  const std::vector<SystemFlow>& systems = result.states.front().systems;
  return std::any_of(systems.begin(), systems.end(), [&](const SystemFlow& system) {
    return system.product == product && std::any_of(system.hoses.begin(), system.hoses.end(), [&](const HoseFlow& h) {
             return std::find(hoses.begin(), hoses.end(), h.id) != hoses.end();
           });
  });
}

Drawn ladder(const site::Site& site, const studies::FlowResult& result, const DrawingWant& want) {
  for (const report::LadderGroup& group : report::ladder_groups(result)) {
    if (group.hoses() < 2 || !(want.product.empty() || gives(group, result, want.product))) continue;
    report::svg::LadderChart chart = report::ladder_chart(group, result.options.keep_flow, site.display, want.prefix);
    chart.width = want.width;
    return {draw(chart), report::ladder_in_words(group, result.options.keep_flow, site.display)};
  }
  return {"", {}, "a ladder needs two hoses or more that depend on each other"};
}

/// The drawing of one course; an answer that says why where there is none.
template <class Draw>
Json of_course(const site::Site& site, const studies::FlowResult& result, const DrawingWant& want, Draw draw_it) {
  const Course course = course_of(result, want);
  if (course.hose != nullptr) return drawn_json(want, draw_it(site, course, want));
  const std::string which = !want.hose.empty() ? "hose '" + want.hose + "'" : "an open hose";
  return refused("there is no course to " + which + (want.product.empty() ? "" : " of '" + want.product + "'"),
                 "name a hose that is open and whose flow is determined");
}

Json of_flow(const Asked& asked) {
  WantReader reader(asked.want, flow_drawing_members);
  DrawingWant want = read_drawing(reader);
  want.product = reader.text("product");
  want.hose = reader.text("hose");
  AskedFlow flow = asked_flow(asked, reader);
  if (!flow.problem.is_null()) return flow.problem;
  flow.options.spans = flow.options.lines_at_rest = false;
  flow.options.ladders = want.drawing == "ladder";
  const OpenedSite& opened = *flow.opened;
  const studies::FlowResult& result = asked.shared.flow(opened, flow.options, asked.context);
  if (result.states.empty()) return refused("there is no set of open hoses", "open a hose");
  if (want.drawing == "plan") return drawn_json(want, plan(opened.site, result, want));
  if (want.drawing == "ladder") return drawn_json(want, ladder(opened.site, result, want));
  if (want.drawing == "grade-line") return of_course(opened.site, result, want, grade_line);
  if (want.drawing == "budget") return of_course(opened.site, result, want, budget);
  return of_course(opened.site, result, want, section);
}

Json of_containment(const Asked& asked) {
  WantReader reader(asked.want, sumps_members);
  const DrawingWant want = read_drawing(reader);
  const studies::ContainmentOptions options = read_containment_want(reader);
  const OpenedSite& opened = asked.shared.opened(read_units(reader));
  if (!reader.good()) return reader.problem();
  if (!opened.problem.is_null()) return opened.problem;
  const studies::ContainmentResult result = studies::study_containment(opened.site, options, asked.context);
  report::svg::SumpChart chart = report::sump_chart(result, opened.site, want.prefix);
  report::add_fill_rows(result, opened.site.display, chart);
  chart.width = want.width;
  return drawn_json(want, {draw(chart), report::sumps_remarks(result, opened.site), "enter the depth of a sump"});
}

/// The scene of an incident. All its runs are computed, so that the scales fit each of them.
Json of_incident(const Asked& asked) {
  WantReader reader(asked.want, scene_members);
  const DrawingWant want = read_drawing(reader);
  const ToldIncident told = told_incident(asked, reader);
  if (!told.problem.is_null()) return told.problem;
  const site::Site& site = told.opened->site;
  const studies::IncidentResult& result = *told.result;
  return drawn_json(want, {report::moving_scene(result, site, want.width, want.prefix),
                           report::scene_remarks(result, site, !result.jets.empty()),
                           "ask for an incident at a dispenser whose figures are entered"});
}

}  // namespace

Json drawing_answer(const Asked& asked) {
  const Json& drawing = asked.want["drawing"];
  if (drawing == "sumps") return of_containment(asked);
  if (drawing == "scene") return of_incident(asked);
  if (is_flotation_drawing(drawing)) return flotation_drawing(asked);
  if (is_vapor_drawing(drawing)) return vapor_drawing(asked);
  if (is_line_test_drawing(drawing)) return line_test_drawing(asked);
  if (drawing == "meter-errors") return meter_drawing(asked);
  return of_flow(asked);
}

}  // namespace forecourse::server
