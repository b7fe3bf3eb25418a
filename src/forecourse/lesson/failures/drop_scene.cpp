#include "forecourse/lesson/failures/drop_scene.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>

#include "forecourse/lesson/failures/scene.h"
#include "forecourse/lesson/failures/spot.h"
#include "forecourse/lesson/rests_on.h"
#include "forecourse/studies/tank/tank.h"

namespace forecourse::lesson {
namespace {

using studies::DeliveryCourse;
using studies::DeliveryHappening;
using studies::DeliveryRun;
using studies::UllageTold;

std::vector<std::string> command_of(const DropSide& side) {
  const studies::DeliveryTexts& t = side.texts;
  std::vector<std::string> out{"delivery"};
  if (!t.delivery.empty()) out.push_back(t.delivery);
  const auto add = [&](const char* option, const std::string& value) {
    if (!value.empty()) out.insert(out.end(), {option, value});
  };
  add("--tank", t.tank);
  add("--volume", t.volume);
  for (const std::string& part : t.without) add("--without", part);
  for (const std::string& vent : t.blocked) add("--blocked", vent);
  for (const std::string& set : side.sets) add("--set", set);
  return out;
}

/// The sum of several courses, each no less than 0 where only that side of it counts.
std::vector<double> sum_of(const std::vector<DeliveryCourse>& courses, std::size_t length, double sign) {
  std::vector<double> out(length, 0.0);
  for (const DeliveryCourse& course : courses) {
    for (std::size_t i = 0; i < length && i < course.value.size(); ++i) {
      if (std::isfinite(course.value[i])) out[i] += std::max(0.0, sign * course.value[i]);
    }
  }
  return out;
}

const DeliveryCourse* find_course(const std::vector<DeliveryCourse>& courses, const std::string& name) {
  const auto found =
      std::find_if(courses.begin(), courses.end(), [&](const DeliveryCourse& one) { return one.name == name; });
  return found == courses.end() ? nullptr : &*found;
}

/// The place of the ullage that a tank has a share of; its number of ullages where there is none.
std::size_t ullage_of(const DeliveryRun& run, const std::string& tank) {
  const auto found = std::find_if(run.ullages.begin(), run.ullages.end(), [&](const UllageTold& one) {
    return std::find(one.tanks.begin(), one.tanks.end(), tank) != one.tanks.end();
  });
  return static_cast<std::size_t>(std::distance(run.ullages.begin(), found));
}

/// Pressure between the settings of the vent: 1 where it opens, -1 where it opens to vacuum.
void add_ullage(const UllageTold& ullage, const DeliveryCourse& pressure, Scene& scene) {
  scene.courses.push_back({"ullage", "pressure of the vapor", Quantity::ullage_pressure, pressure.value});
  if (!ullage.opens_at || !(*ullage.opens_at > 0.0)) return;
  const double vacuum = ullage.vacuum_opens_at.value_or(*ullage.opens_at);
  std::vector<double>& values = scene.values["pressure"];
  for (const double one : pressure.value) {
    values.push_back(one < 0.0 ? -share_of(-one, vacuum) : share_of(one, *ullage.opens_at));
  }
}

std::optional<double> first_time(const DeliveryRun& run, DeliveryHappening what, const std::string& subject) {
  const auto found = std::find_if(run.events.begin(), run.events.end(), [&](const studies::DeliveryEvent& one) {
    return one.what == what && (subject.empty() || one.subject == subject);
  });
  return found == run.events.end() ? std::nullopt : std::optional(found->time);
}

/// Shares of 1 where something flows.
std::vector<double> any_of(const std::vector<double>& course) {
  std::vector<double> out;
  out.reserve(course.size());
  for (const double one : course) out.push_back(one > 0.0 ? 1.0 : 0.0);
  return out;
}

void add_values(const DropSide& side, const DeliveryRun& run, const DropMost& most, Scene& scene) {
  const studies::DeliveryChart& chart = run.chart;
  const std::size_t length = chart.time.size();
  const std::string& tank = side.texts.tank;
  const studies::DropTold& drop = run.drops.front();
  if (const auto* left = find_course(chart.truck, drop.compartment)) {
    scene.values["truck"] = shares_of(left->value, drop.brought);
  }
  if (const auto* depth = find_course(chart.depth, tank)) scene.values["tank"] = shares_of(depth->value, most.depth);
  scene.values["flow"] = shares_of(sum_of(chart.rate, length, 1.0), most.rate);
  scene.values["vapor"] = shares_of(sum_of(chart.returned, length, 1.0), most.vapor);
  const std::vector<double> out = sum_of(chart.vent, length, 1.0);
  scene.values["vent"] = shares_of(out, most.vapor);
  scene.values["out"] = any_of(out);
  scene.values["in"] = any_of(sum_of(chart.vent, length, -1.0));
  hold(scene, "blocked", side.texts.blocked.empty() ? 0.0 : 1.0);
  step(scene, "valve", first_time(run, DeliveryHappening::closes, ""));
  scene.courses.push_back({"rate", "flows into the tank", Quantity::flow, sum_of(chart.rate, length, 1.0)});
}

}  // namespace

DropWorked work_out(const site::Site& site, const DropSide& side, bool charts, const Context& context) {
  DropWorked out;
  out.command = command_of(side);
  auto options = studies::read_delivery_options(side.texts, studies::Asker::command);
  std::vector<Diagnostic> wrong = options.diagnostics;
  if (wrong.empty()) wrong = check_options(site, options.value);
  if (!wrong.empty()) {
    out.problem = wrong.front().message + (wrong.front().hint.empty() ? "" : ": " + wrong.front().hint);
    return out;
  }
  options.value.table = options.value.spans = false;
  options.value.charts = charts;
  studies::DeliveryResult result = study_delivery(site, options.value, context);
  out.problem = result.problem;
  if (out.problem.empty() && result.runs.empty()) out.problem = "nothing is dropped into tank " + side.texts.tank;
  if (!out.problem.empty()) return out;
  out.rests_on = lesson::rests_on(result.defaults);
  out.run = std::move(result.runs.front());
  if (out.run.drops.empty()) out.problem = "nothing is dropped into tank " + side.texts.tank;
  return out;
}

DropMost most_of_both(const site::Site& site, const std::string& tank, const DropWorked& a, const DropWorked& b) {
  DropMost out;
  studies::TankOptions options;
  options.tank = tank;
  const studies::TankResult told = study_tank(site, options);
  if (!told.tanks.empty()) out.depth = told.tanks.front().full_level;
  for (const DropWorked* one : {&a, &b}) {
    const studies::DeliveryChart& chart = one->run.chart;
    const std::size_t length = chart.time.size();
    out.rate = lesson::most_of(sum_of(chart.rate, length, 1.0), out.rate);
    out.vapor = lesson::most_of(sum_of(chart.returned, length, 1.0), out.vapor);
    out.vapor = lesson::most_of(sum_of(chart.vent, length, 1.0), out.vapor);
  }
  return out;
}

Scene drop_scene(const DropSide& side, const DropWorked& worked, const DropMost& most, bool works) {
  const DeliveryRun& run = worked.run;
  Scene scene;
  scene.name = side.name;
  scene.works = works;
  scene.command = worked.command;
  scene.rests_on = worked.rests_on;
  scene.time = run.chart.time;
  scene.events.reserve(run.events.size());
  for (const studies::DeliveryEvent& event : run.events) scene.events.push_back({event.time, event.words});
  add_values(side, run, most, scene);
  scene.told = {{"the drop takes", run.time, Quantity::time, "/result/runs/0/time_s"},
                {"mean rate", run.mean_rate, Quantity::flow, "/result/runs/0/mean_rate_m3_per_s"}};
  const std::size_t u = ullage_of(run, side.texts.tank);
  if (u >= run.ullages.size() || !run.ullages[u].problem.empty()) return scene;
  if (u < run.chart.ullage.size()) add_ullage(run.ullages[u], run.chart.ullage[u], scene);
  const std::string at = "/result/runs/0/ullages/" + std::to_string(u) + "/";
  scene.told.push_back({"highest pressure of the vapor", run.ullages[u].highest_pressure, Quantity::ullage_pressure,
                        at + "highest_pressure_gauge_pa"});
  scene.told.push_back({"vapor out of the vent", run.ullages[u].vented, Quantity::volume, at + "vented_m3"});
  scene.told.push_back({"vapor back to the tanker", run.ullages[u].returned, Quantity::volume, at + "to_truck_m3"});
  return scene;
}

std::vector<Drop> drops(const site::Site& site, const std::string& at, FitsDrop fits) {
  std::vector<Drop> all;
  for (const site::Delivery& delivery : site.deliveries) {
    for (const site::TruckCompartment& compartment : delivery.compartments) {
      const Drop drop{&delivery, &compartment, tank_at(site, compartment.tank.text)};
      if (drop.tank != nullptr && fits(drop)) all.push_back(drop);
    }
  }
  const bool is_tank =
      std::any_of(site.tanks.begin(), site.tanks.end(), [&](const site::Tank& one) { return one.id.text == at; });
  const bool is_delivery = !at.empty() && std::any_of(site.deliveries.begin(), site.deliveries.end(),
                                                      [&](const site::Delivery& one) { return one.id.text == at; });
  std::vector<Drop> out;
  for (const Drop& drop : all) {
    if ((!is_tank || drop.tank->id.text == at) && (!is_delivery || drop.delivery->id.text == at)) out.push_back(drop);
  }
  return out;
}

}  // namespace forecourse::lesson
