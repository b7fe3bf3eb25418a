#include "forecourse/checks/figures/sumps.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

using site::records::TestKind;

constexpr Period thirty_days{0, 0, 30};
constexpr Period six_months{0, 6, 0};

std::vector<MaybeDay> with_recorded(const Facts& facts, std::vector<MaybeDay> days, const Recorded& which) {
  for (const site::Date& day : recorded_days(facts, which)) days.push_back(day);
  return days;
}

void exempt_above_ground(const site::Tank& tank, FigureAt& out) {
  if (is_above_ground(tank)) out.exempt = above_ground;
}

// Each figure is of the parts that were repaired. What was never repaired has none.

/// Tanks and lines. An inspection of the inside, or the monthly monitoring of the tank, proves a repair as well.
std::vector<FigureAt> primary(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (!tank.repaired) continue;
    std::vector<MaybeDay> proofs{tank.tested, tank.inspected_inside};
    if (tank.interstice) proofs.push_back(tank.interstice->monitored);
    if (tank.gauge) proofs.push_back(tank.gauge->leak_tested);
    if (tank.statistics) proofs.push_back(tank.statistics->made);
    out.push_back(time_to_first(facts, tank.id.text, *tank.repaired,
                                with_recorded(facts, proofs, {TestKind::tank_tightness, {tank.id.text}}), thirty_days,
                                "enter tested of the tank; it is due within 30 days of the repair"));
    exempt_above_ground(tank, out.back());
  }
  for (const site::Line& line : facts.site.lines) {
    if (!line.repaired) continue;
    std::vector<MaybeDay> proofs{line.tested};
    if (line.interstice) proofs.push_back(line.interstice->monitored);
    out.push_back(time_to_first(facts, line.id.text, *line.repaired,
                                with_recorded(facts, proofs, {TestKind::line_tightness, {line.id.text}}), thirty_days,
                                "enter tested of the line; it is due within 30 days of the repair"));
  }
  return out;
}

std::vector<FigureAt> only_known(std::vector<FigureAt> all) {
  std::erase_if(all, [](const FigureAt& one) { return one.subject.empty(); });
  return all;
}

std::vector<FigureAt> sump_after(const Facts& facts, MaybeDay site::Sump::*event, const char* enter) {
  return only_known(each_sump(facts, [&](const SumpOf& sump) {
    const MaybeDay& from = (*sump.sump).*event;
    if (!from) return FigureAt{};
    return time_to_first(facts, sump.subject, *from,
                         with_recorded(facts, {sump.sump->tested}, {TestKind::sump, sump.names()}), thirty_days, enter);
  }));
}

std::vector<FigureAt> sump(const Facts& facts) {
  return sump_after(facts, &site::Sump::repaired, "enter tested of the sump; it is due within 30 days of the repair");
}

/// Spill containers after an event.
std::vector<FigureAt> container_after(const Facts& facts, MaybeDay site::SpillContainer::*event, const char* enter) {
  std::vector<FigureAt> out;
  each_fill_of(facts.site, [&](const std::string& subject, const site::Fill& fill, const site::Tank& tank) {
    if (!fill.spill_container || !((*fill.spill_container).*event)) return;
    out.push_back(time_to_first(
        facts, subject, *((*fill.spill_container).*event),
        with_recorded(facts, {fill.spill_container->tested}, {TestKind::spill_container, record_names_of(tank, fill)}),
        thirty_days, enter));
    exempt_above_ground(tank, out.back());
  });
  return out;
}

/// Spill containers and overfill devices.
std::vector<FigureAt> spill_and_overfill(const Facts& facts) {
  constexpr const char* enter = "enter tested of it; it is due within 30 days of the repair";
  std::vector<FigureAt> out = container_after(facts, &site::SpillContainer::repaired, enter);
  for (const site::Tank& tank : facts.site.tanks) {
    const auto add = [&](std::string subject, const std::vector<std::string>& names, const MaybeDay& repaired,
                         const MaybeDay& tested) {
      if (!repaired) return;
      out.push_back(time_to_first(facts, std::move(subject), *repaired,
                                  with_recorded(facts, {tested}, {TestKind::overfill_device, names}), thirty_days,
                                  enter));
      exempt_above_ground(tank, out.back());
    };
    for (const site::Fill& fill : tank.fills) {
      if (fill.overfill_valve)
        add(name_of(tank, fill) + " overfill valve", record_names_of(tank, fill), fill.overfill_valve->repaired,
            fill.overfill_valve->tested);
    }
    if (tank.overfill_alarm)
      add(tank.id.text, {tank.id.text}, tank.overfill_alarm->repaired, tank.overfill_alarm->tested);
  }
  return out;
}

/// Containers and sumps whose walls are watched no more.
std::vector<FigureAt> after_monitoring(const Facts& facts) {
  constexpr const char* enter = "enter tested of it; it is due within 30 days of the end of its monitoring";
  std::vector<FigureAt> out = container_after(facts, &site::SpillContainer::monitoring_ended, enter);
  for (FigureAt& one : sump_after(facts, &site::Sump::monitoring_ended, enter)) out.push_back(std::move(one));
  return out;
}

/// Its limit is six months by the calendar.
std::vector<FigureAt> protection(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    if (!tank.protection || !tank.protection->repaired) continue;
    const site::Date& repaired = *tank.protection->repaired;
    out.push_back(time_to_first(facts, tank.id.text, repaired,
                                with_recorded(facts, {tank.protection->tested}, {TestKind::protection, {tank.id.text}}),
                                six_months, "enter tested of the protection; it is due within 6 months of the repair"));
    out.back().at_most = seconds_of_days(days_between(repaired, later(repaired, six_months)));
    exempt_above_ground(tank, out.back());
  }
  return out;
}

}  // namespace

std::vector<Figure> repair_figures() {
  return {
      time_figure("repair-to-test", "time from the repair of a tank or a line to its test", primary),
      time_figure("sump-repair-to-test", "time from the repair of a sump to its test", sump),
      time_figure("spill-repair-to-test", "time from the repair of a spill container or overfill device to its test",
                  spill_and_overfill),
      time_figure("monitoring-end-to-test", "time from the end of a container's monitoring to its test",
                  after_monitoring),
      time_figure("protection-repair-to-test", "time from the repair of a tank's protection to its test", protection),
  };
}

}  // namespace forecourse::checks
