#include "forecourse/decide/compare/incident/incident_comparison.h"

#include <algorithm>

#include "forecourse/studies/incident/setup/groundwork.h"

namespace forecourse::decide {
namespace {

/// A station whose file asks for no incident of its own.
site::Site without_incidents(site::Site site) {
  site.incidents.clear();
  return site;
}

bool same_spread(const studies::Spread& a, const studies::Spread& b) {
  return same_amount(IncidentAmount::volume, {a.low, b.low}) &&
         same_amount(IncidentAmount::volume, {a.likely, b.likely}) &&
         same_amount(IncidentAmount::volume, {a.high, b.high});
}

template <class Rows>
bool none_differs(const Rows& rows) {
  return std::none_of(rows.begin(), rows.end(), [](const auto& row) { return row.differs; });
}

void lay_beside(IncidentComparison& c) {
  const studies::IncidentRun& a = c.a.runs.front();
  const studies::IncidentRun& b = c.b.runs.front();
  c.figures = figure_rows(a, b);
  c.holders = holder_rows(a, b);
  c.causes = cause_rows(a, b);
  c.events = event_rows(a, b);
  c.ends = end_rows(c.a, c.b);
  c.cases = case_rows(c.a, c.b);
  c.barriers = barrier_rows(c.a, c.b);
  if (c.a.spread && c.b.spread) c.paired = pair_spreads(*c.a.spread, *c.b.spread);
}

}  // namespace

bool IncidentComparison::same_escape() const {
  const bool same_first = std::all_of(figures.begin(), figures.end(), [](const FigureRow& row) {
    return amount_of(row.figure) != IncidentAmount::volume || !row.differs;
  });
  const bool same_pairs = !paired || (paired->less == 0.0 && paired->more == 0.0);
  return same_first && none_differs(cases) && same_spread(a.escaped, b.escaped) &&
         same_spread(a.to_environment, b.to_environment) && same_pairs;
}

bool IncidentComparison::same_in_all() const {
  return same_escape() && none_differs(figures) && none_differs(holders) && none_differs(causes) &&
         none_differs(events) && none_differs(ends) && none_differs(barriers);
}

studies::IncidentOptions shared_options(const site::Site& a, const studies::IncidentOptions& options) {
  studies::IncidentOptions out = options;
  out.request = studies::merged_request(a, options);
  return out;
}

IncidentComparison compare_incident(const site::Site& a, const site::Site& b, const studies::IncidentOptions& options,
                                    const Context& context) {
  IncidentComparison c;
  c.options = shared_options(a, options);
  c.name_a = a.name.text;
  c.name_b = b.name.text;
  c.only_a = parts_only_in(a, b);
  c.only_b = parts_only_in(b, a);
  c.a = studies::study_incident(without_incidents(a), c.options, context);
  c.b = studies::study_incident(without_incidents(b), c.options, context);
  const bool determined = c.a.problem.empty() && c.b.problem.empty();
  if (determined && !c.a.runs.empty() && !c.b.runs.empty()) lay_beside(c);
  return c;
}

std::vector<Objection> objections(const site::Site& a, const site::Site& b, const studies::IncidentOptions& options) {
  const studies::IncidentOptions shared = shared_options(a, options);
  std::vector<Objection> out;
  for (const Diagnostic& found : studies::check_options(without_incidents(a), shared)) {
    out.push_back({found, true, false});
  }
  for (const Diagnostic& found : studies::check_options(without_incidents(b), shared)) {
    const auto told = std::find_if(out.begin(), out.end(), [&](const Objection& one) {
      return one.in_a && one.what.message == found.message && one.what.hint == found.hint;
    });
    if (told != out.end()) {
      told->in_b = true;
    } else {
      out.push_back({found, false, true});
    }
  }
  return out;
}

}  // namespace forecourse::decide
