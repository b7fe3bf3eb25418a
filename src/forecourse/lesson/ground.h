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

}  // namespace forecourse::lesson
