#include <algorithm>
#include <utility>

#include "forecourse/lesson/failures/kinds.h"

namespace forecourse::lesson {
namespace {

using studies::Happening;

/// When somebody presses the stop, where the file does not say so; a chosen time, told with what the scene rests on.
constexpr const char* pressed_after = "60 s";

bool has_breakaway(const Spot& spot) { return spot.hose->breakaway || spot.hose->parting; }

bool says_stop(const site::Site& site, const char* kind) {
  const auto found = std::find_if(site.incidents.begin(), site.incidents.end(),
                                  [&](const site::IncidentRequest& one) { return one.kind.text == kind; });
  return found != site.incidents.end() && found->stop_at;
}

/// With and without somebody who stops the pumps.
IncidentPlan stopped(const site::Site& site, const char* kind, const std::string& at) {
  IncidentPlan out;
  out.at = at;
  out.fails = incident_side("nobody can stop the pumps", kind, at, {"emergency-stop"});
  out.works = incident_side("emergency stop works", kind, at);
  if (!says_stop(site, kind)) {
    out.works.texts.stop_at = pressed_after;
    out.works.chosen = {"somebody presses the stop after " + std::string(pressed_after) + ", chosen for this lesson"};
  }
  out.acts = Happening::emergency_stop;
  out.idle = "nothing is stopped here";
  return out;
}

/// A line of an id, else that of the file's incident, else the first.
std::string line_at(const site::Site& site, const std::string& at) {
  std::vector<std::string> wanted{at};
  for (const site::IncidentRequest& one : site.incidents) {
    if (one.kind.text == "line-break") wanted.push_back(one.at.text);
  }
  for (const std::string& id : wanted) {
    for (const site::Line& line : site.lines) {
      if (!id.empty() && line.id.text == id) return id;
    }
  }
  return site.lines.empty() ? std::string() : site.lines.front().id.text;
}

}  // namespace

IncidentPlan plan_drive_off(const site::Site& site, const std::string& at) {
  const std::vector<Spot> spots = hoses(site, at, "drive-off", has_breakaway);
  IncidentPlan out;
  out.at = at;
  if (spots.empty()) {
    out.problem = "no hose with a breakaway is listed: add breakaway = { ... } to a [[dispenser.hose]]";
    return out;
  }
  out.spot = spots.front();
  out.at = out.spot.id;
  out.fails = incident_side("without breakaway", "drive-off", out.at, {"breakaway"});
  out.works = incident_side("breakaway works", "drive-off", out.at);
  out.acts = Happening::breakaway_parts;
  out.idle = "the breakaway is not what gives way first here";
  return out;
}

IncidentPlan plan_nozzle_open(const site::Site& site, const std::string& at) {
  const std::vector<Spot> spots = hoses(site, at, "nozzle-left-open", is_any);
  if (spots.empty()) {
    IncidentPlan out;
    out.at = at;
    out.problem = "no hose is listed: add a [[dispenser.hose]]";
    return out;
  }
  IncidentPlan out = stopped(site, "nozzle-left-open", spots.front().id);
  out.spot = spots.front();
  out.fixed = {{"lever", 1.0, 1.0}, {"shut", 0.0, 0.0}};
  return out;
}

IncidentPlan plan_stop_dead(const site::Site& site, const std::string& at) {
  const std::string line = line_at(site, at);
  IncidentPlan out = stopped(site, "line-break", line);
  if (site.emergency_stops.empty()) {
    out.problem = "no emergency stop is listed: add an [[emergency_stop]]";
  } else if (line.empty()) {
    out.problem = "no line is listed that could break: add a [[line]]";
  }
  return out;
}

}  // namespace forecourse::lesson
