#pragma once

#include <string>
#include <vector>

#include "forecourse/report/svg/sumps.h"
#include "forecourse/site/site.h"
#include "forecourse/studies/containment/containment.h"

namespace forecourse::report {

/// All sumps of a station to one scale, with what each holds.
[[nodiscard]] svg::SumpChart sump_chart(const studies::ContainmentResult& result, const site::Site& site,
                                        const std::string& id);

/// Adds how soon each is filled, at each inflow of the study.
void add_fill_rows(const studies::ContainmentResult& result, site::Display display, svg::SumpChart& chart);

/// How to read the drawing, and what it could not show because it was not entered; sentences.
[[nodiscard]] std::vector<std::string> sumps_remarks(const studies::ContainmentResult& result, const site::Site& site);

}  // namespace forecourse::report
