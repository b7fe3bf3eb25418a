#pragma once

#include <set>
#include <string>

#include "forecourse/studies/incident/release/told_run.h"
#include "forecourse/studies/incident/setup/make_case.h"
#include "support/stations.h"

namespace forecourse::test {

template <class Q>
site::Entered<Q> entered(double si) {
  return {Q::from_si(si), Q::from_si(si), Q::from_si(si), {}};
}

/// An incident at a place, ready for cases to be made of it.
struct IncidentGround {
  IncidentGround(const std::string& text, studies::IncidentKind kind, const std::string& at) : site(station(text)) {
    options.kind = kind;
    options.request.at.text = at;
    lay();
  }
  void lay() {
    request = studies::merged_request(site, options);
    ground = studies::lay_ground(site, options);
  }
  [[nodiscard]] studies::Scene scene() const { return {site, options, request, ground}; }
  [[nodiscard]] studies::release::Case made(const std::set<studies::Barrier>& missing = {},
                                            studies::Breakage breakage = studies::Breakage::at_groove) const {
    studies::Inputs inputs;
    return make_case(scene(), inputs, missing, breakage);
  }
  [[nodiscard]] studies::release::Names names() const {
    studies::release::Names names;
    for (const auto& end : ground.ends) {
      names.places.push_back(end.place);
      names.products.push_back(end.product);
      names.tanks.push_back(end.tank);
    }
    names.sump = names.sensor = ground.dispenser;
    return names;
  }
  [[nodiscard]] studies::IncidentRun run(const std::set<studies::Barrier>& missing = {}) const {
    return studies::release::tell_run(made(missing), names(), true, {});
  }

  site::Site site;
  studies::IncidentOptions options;
  site::IncidentRequest request;
  studies::Groundwork ground;
};

}  // namespace forecourse::test
