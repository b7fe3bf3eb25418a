#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

using site::records::TestKind;

/// `read(name, container, names by which records may call it)`
template <class Read>
std::vector<FigureAt> each_container(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  each_fill_of(facts.site, [&](const std::string& subject, const site::Fill& fill, const site::Tank& tank) {
    if (!fill.spill_container) return;
    out.push_back(read(subject, *fill.spill_container, record_names_of(tank, fill)));
    out.back().exempt = spill_exemption(tank);
  });
  return out;
}

std::vector<FigureAt> fitted(const Facts& facts) {
  return each_fill(facts, [](const site::Tank& tank, const site::Fill& fill, std::string name) {
    FigureAt out = entered_fact(std::move(name), fill.where, fill.spill_container.has_value(), {});
    out.exempt = spill_exemption(tank);
    return out;
  });
}

std::vector<FigureAt> double_wall(const Facts& facts) {
  return each_container(facts, [](const std::string& subject, const site::SpillContainer& container, const auto&) {
    return entered_fact(subject, container.where, container.double_wall, "enter double_wall of the spill container");
  });
}

std::vector<FigureAt> tested(const Facts& facts) {
  return each_container(facts,
                        [&](const std::string& subject, const site::SpillContainer& container, const auto& names) {
                          return last_tested(facts, subject, container.where, container.tested,
                                             {TestKind::spill_container, names}, "enter tested of the spill container");
                        });
}

std::vector<FigureAt> monitored(const Facts& facts) {
  return each_container(facts,
                        [&](const std::string& subject, const site::SpillContainer& container, const auto& names) {
                          return last_looked(facts, subject, container.where, container.monitored,
                                             {"walls", names, true}, "enter monitored of the spill container");
                        });
}

std::vector<FigureAt> overfill_tested(const Facts& facts) {
  std::vector<FigureAt> out;
  for (const site::Tank& tank : facts.site.tanks) {
    each_overfill_device_of(
        tank, [&](const std::vector<std::string>& names, const auto& device, const std::string& noun) {
          out.push_back(last_tested(facts, names.front(), device.where, device.tested,
                                    {TestKind::overfill_device, names}, "enter tested of the " + noun));
          out.back().exempt = spill_exemption(tank);
        });
  }
  return out;
}

}  // namespace

std::vector<Figure> spill_figures() {
  return {
      fact_figure("spill-container-fitted", "a spill container at a fill", fitted),
      fact_figure("spill-container-double-wall", "two walls of a spill container", double_wall),
      day_figure("spill-container-tested", "last test of a spill container", tested),
      day_figure("spill-container-monitored", "last look at the walls of a spill container", monitored),
      day_figure("overfill-device-tested", "last inspection of an overfill device", overfill_tested),
  };
}

}  // namespace forecourse::checks
