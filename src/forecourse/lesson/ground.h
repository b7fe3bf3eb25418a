#pragma once

#include "forecourse/checks/station/check_station.h"
#include "forecourse/site/site.h"

namespace forecourse::lesson {

/// A station and what its studies found: what pages, failures and questions are made of.
struct Ground {
  const site::Site& site;
  const checks::Studied& studied;
  const checks::CheckResult& checks;
};

/// The studies and the findings of a station, kept for a ground.
struct Studies {
  checks::Studied studied;
  checks::CheckResult checks;
};

/// Studies that requirements rest on, each with its own options left as they are, and every finding.
[[nodiscard]] Studies make_studies(const site::Site& site, const site::Date& today, const Context& context = {});

/// \pre both outlive the result
[[nodiscard]] inline Ground ground_of(const site::Site& site, const Studies& studies) {
  return {site, studies.studied, studies.checks};
}

}  // namespace forecourse::lesson
