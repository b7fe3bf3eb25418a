#include <algorithm>

#include "forecourse/studies/incident/setup/groundwork.h"

namespace forecourse::studies {
namespace {

template <class T>
void put_over(std::optional<T>& under, const std::optional<T>& over) {
  if (over) under = over;
}
template <class T>
void put_over(std::vector<T>& under, const std::vector<T>& over) {
  if (!over.empty()) under = over;
}
void put_over(site::Name& under, const site::Name& over) {
  if (!over.empty()) under = over;
}

void put_over(site::IncidentRequest& under, const site::IncidentRequest& over) {
  put_over(under.at, over.at);
  put_over(under.open, over.open);
  put_over(under.stop_at, over.stop_at);
  put_over(under.stop_by, over.stop_by);
  put_over(under.counts_until, over.counts_until);
  put_over(under.open_area, over.open_area);
  put_over(under.discharge_coefficient, over.discharge_coefficient);
  put_over(under.along, over.along);
  put_over(under.pump_runs, over.pump_runs);
  put_over(under.readings, over.readings);
  put_over(under.exponent, over.exponent);
  put_over(under.running_pressure, over.running_pressure);
  put_over(under.holding_pressure, over.holding_pressure);
  put_over(under.running_share, over.running_share);
  put_over(under.runs_for, over.runs_for);
  put_over(under.rests_for, over.rests_for);
  put_over(under.line_compliance, over.line_compliance);
  put_over(under.columns, over.columns);
  put_over(under.sensor_dead_for, over.sensor_dead_for);
  put_over(under.into_sump, over.into_sump);
  put_over(under.vehicle, over.vehicle);
  put_over(under.fire, over.fire);
  put_over(under.delivery, over.delivery);
  put_over(under.driver_acts_in, over.driver_acts_in);
  put_over(under.ordered, over.ordered);
}

}  // namespace

site::IncidentRequest merged_request(const site::Site& site, const IncidentOptions& options) {
  site::IncidentRequest request;
  const auto fits = [&](const site::IncidentRequest& r) {
    const bool same_id = options.request.id.empty() || options.request.id == r.id;
    return r.kind.text == word(options.kind) && same_id;
  };
  const auto found = std::find_if(site.incidents.begin(), site.incidents.end(), fits);
  if (found != site.incidents.end()) request = *found;
  if (options.none_open) request.open.clear();
  // A leak is said by its readings or by its opening: one that is asked takes the place of the other in the file.
  if (options.request.open_area && options.request.readings.empty()) request.readings.clear();
  if (!options.request.readings.empty() && !options.request.open_area) request.open_area.reset();
  put_over(request, options.request);
  request.kind.text = word(options.kind);
  return request;
}

}  // namespace forecourse::studies
