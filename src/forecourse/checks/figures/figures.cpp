#include <algorithm>
#include <iterator>

#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {

const std::vector<Figure>& figures() {
  static const std::vector<Figure> all = [] {
    std::vector<Figure> out;
    for (std::vector<Figure> part :
         {tank_figures(),     monitoring_figures(), probability_figures(),    well_figures(),
          spill_figures(),    tank_place_figures(), protected_tank_figures(), burial_figures(),
          vapor_figures(),    line_figures(),       repair_figures(),         piping_test_figures(),
          sump_figures(),     dispenser_figures(),  access_figures(),         hose_figures(),
          spout_figures(),    meter_figures(),      safety_figures(),         extinguisher_figures(),
          ground_figures(),   equipment_figures(),  record_figures(),         listing_figures(),
          pressure_figures(), recovery_figures(),   practice_figures(),       study_figures()}) {
      std::move(part.begin(), part.end(), std::back_inserter(out));
    }
    return out;
  }();
  return all;
}

const Figure* find_figure(std::string_view id) {
  const auto& all = figures();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Figure& one) { return one.id == id; });
  return found == all.end() ? nullptr : &*found;
}

FigureAt entered_fact(std::string subject, SourceSpan where, const site::Fact& fact, std::string enter) {
  FigureAt out;
  out.subject = std::move(subject);
  out.where = where;
  out.fact = fact;
  if (!fact) out.enter = std::move(enter);
  return out;
}

FigureAt entered_day(std::string subject, SourceSpan where, const std::optional<site::Date>& day, std::string enter) {
  FigureAt out;
  out.subject = std::move(subject);
  out.where = day && day->where.text == 0 ? day->where : where;  // never in the records
  out.day = day;
  if (!day) out.enter = std::move(enter);
  return out;
}

}  // namespace forecourse::checks
