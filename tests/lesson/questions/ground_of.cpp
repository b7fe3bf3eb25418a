#include "lesson/questions/ground_of.h"

#include "forecourse/site/has_parts.h"
#include "support/stations.h"

namespace forecourse::test {

StudiedStation::StudiedStation(const std::string& text) : site_(station(text)) {
  studies::FlowOptions flow;
  flow.spans = false;
  flow.ladders = false;
  if (site::has_hose(site_)) studied_.flow = studies::study_flow(site_, flow);
  if (site::has_sump(site_)) studied_.containment = studies::study_containment(site_, {});
  if (site::has_tank_shape(site_)) studied_.tank = studies::study_tank(site_, {});
  if (!site_.tanks.empty()) studied_.vapor = studies::study_vapor(site_, {});
  if (!site_.lines.empty()) studied_.line_test = studies::study_line_test(site_, {});
  for (const site::Delivery& delivery : site_.deliveries) {
    studies::DeliveryOptions options;
    options.delivery = delivery.id.text;
    options.table = false;
    options.spans = false;
    studied_.deliveries.push_back(studies::study_delivery(site_, options));
  }
}

}  // namespace forecourse::test
