#pragma once

#include "forecourse/site/records/delivered.h"
#include "forecourse/site/records/dip.h"
#include "forecourse/site/records/incident.h"
#include "forecourse/site/records/inspection.h"
#include "forecourse/site/records/proving.h"
#include "forecourse/site/records/returned.h"
#include "forecourse/site/records/sale.h"
#include "forecourse/site/records/test.h"

namespace forecourse::site::records {

/// All that was read and tested at a station, each list in the order of time.
struct Records {
  std::vector<Dip> dips;
  std::vector<Delivered> deliveries;
  std::vector<Sale> sales;
  std::vector<Returned> returns;
  std::vector<Proving> provings;
  std::vector<Test> tests;
  std::vector<Inspection> inspections;
  std::vector<Incident> incidents;
};

}  // namespace forecourse::site::records
