#include "forecourse/store/records/record_of_row.h"

#include <tuple>

namespace forecourse::store {
namespace {

auto order_of(const records::Moment& at) {
  return std::tuple(at.day.year, at.day.month, at.day.day, at.time ? at.time->si() : -1.0);
}

}  // namespace

bool is_before(const records::Moment& a, const records::Moment& b) { return order_of(a) < order_of(b); }

void put(std::vector<records::Inspection>& all, InspectionRow row) {
  const bool goes_on = !all.empty() && order_of(all.back().at) == order_of(row.at) && all.back().kind == row.kind &&
                       all.back().by == row.by;
  if (!goes_on) all.push_back({row.at, std::move(row.kind), std::move(row.by), {}});
  const bool has_item = !row.item.part.empty() || !row.item.what.empty() || row.item.in_order;
  if (has_item) all.back().items.push_back(std::move(row.item));
}

void put(std::vector<records::Incident>& all, IncidentRow row) {
  const records::Incident& incident = row.incident;
  const bool goes_on = !all.empty() && order_of(all.back().at) == order_of(incident.at) &&
                       all.back().kind == incident.kind && all.back().part == incident.part;
  if (!goes_on) all.push_back(std::move(row.incident));
  if (row.step.at.day.year == 0) row.step.at = all.back().at;
  if (!row.step.what.empty() || !row.step.part.empty()) all.back().steps.push_back(std::move(row.step));
}

}  // namespace forecourse::store
