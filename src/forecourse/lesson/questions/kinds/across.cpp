#include <algorithm>

#include "forecourse/lesson/questions/kinds/all.h"
#include "forecourse/lesson/questions/make/draft.h"
#include "forecourse/lesson/questions/make/known.h"

namespace forecourse::lesson {
namespace {

Asked seconds_saved(const Ground& ground, Chance& chance) {
  std::vector<const site::Line*> lines =
      those(ground.site.lines, [](const site::Line& one) { return !one.id.empty(); });
  chance.shuffle(lines);
  const double sooner = 20.0;  // [s]
  for (const site::Line* line : lines) {
    studies::IncidentOptions options = brief(studies::IncidentKind::line_break, line->id.text);
    const Duration stop = Duration::from_si(60.0);
    options.request.stop_at = site::Entered<Duration>{stop, stop, stop, {}};
    const studies::IncidentResult result = studies::study_incident(ground.site, options);
    if (!result.problem.empty() || result.open_ends.empty() || !(result.open_ends.front().steady_flow > 0.0)) continue;
    const double flow = result.open_ends.front().steady_flow;
    Question draft;
    draft.at = line->id.text;
    draft.caution = escape_caution;
    draft.asks = {
        "Line " + draft.at +
            " breaks midway and its pump runs on. Somebody presses the emergency stop {} sooner than last time. How "
            "much less runs out?",
        {{sooner, Quantity::time}}};
    draft.explains = {"{} run out of the broken end as long as the pump runs.", {{flow, Quantity::flow}}};
    draft.follows = {"Time by flow: {} × {} = {}",
                     {{sooner, Quantity::time}, {flow, Quantity::flow}, {sooner * flow, Quantity::volume}}};
    draft.rests_on = illustrative_of(result.inputs);
    return estimate(std::move(draft), {sooner * flow, Quantity::volume}, 0.2);
  }
  return left_out("no line that can break has its pump and heights entered");
}

std::string joined(const std::vector<std::string>& ids) {
  std::string out;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (i > 0) out += i + 1 == ids.size() ? " and " : ", ";
    out += ids[i];
  }
  return out;
}

Asked sensor_stops(const Ground& ground, Chance& chance) {
  const site::Interlock* lock =
      pick(those(ground.site.interlocks,
                 [](const site::Interlock& one) {
                   return one.then && !one.what.empty() && one.then->value != site::InterlockAction::restrict;
                 }),
           chance);
  if (lock == nullptr)
    return left_out("no interlock is entered with what it does: enter [[interlock]] when, then, what");
  std::vector<std::string> stopped;
  for (const site::Name& one : lock->what) stopped.push_back(one.text);
  const bool stops = lock->then->value == site::InterlockAction::stop;
  std::vector<std::string> pumps;
  for (const site::Pump& pump : ground.site.pumps) pumps.push_back(pump.id.text);
  std::sort(stopped.begin(), stopped.end());
  std::sort(pumps.begin(), pumps.end());
  const std::string alarm = "nothing stops; somebody is told";
  const std::string right = stops ? joined(stopped) + (stopped.size() == 1 ? " stops" : " stop") : alarm;
  std::vector<Option> wrong;
  const auto add = [&](const std::string& words, const char* why) {
    if (words != right) wrong.push_back({{words, {}}, false, why});
  };
  add(alarm, "That is an alarm; here the interlock acts.");
  if (pumps.size() > 1) add(joined(pumps) + " stop", "Not every pump is wired to it.");
  for (const std::string& pump : pumps) add(pump + " stops", "That pump is not what is wired to it.");
  for (const site::Dispenser& one : ground.site.dispensers)
    add(one.id.text + " stops", "A dispenser that is shut leaves the line under pressure.");
  Question draft;
  draft.at = lock->when.text;
  draft.asks = {lock->when.text + " trips. What does interlock " + lock->id.text + " do?", {}};
  draft.explains = {"As it is entered. Whether it does so is shown by its test alone.", {}};
  return choose_words(std::move(draft), {right, {}}, wrong, chance);
}

}  // namespace

std::vector<QuestionKind> across_questions() {
  return {
      {"seconds-saved", Form::estimate, 1, "emergency-stop", seconds_saved},
      {"sensor-stops", Form::choice, 1, "interlocks", sensor_stops},
  };
}

}  // namespace forecourse::lesson
