#pragma once

#include <string_view>

#include "forecourse/decide/mend/judge.h"

namespace forecourse::decide {

/// A text of a station held against everything.
inline checks::CheckResult check_text(const MendStation& station, std::string_view text) {
  const site::Site site = read_changed(station, text).value();
  const checks::Studied studied = study_all(site, station, {});
  return checks::check_station(checks::facts_of(site, studied, station.today, station.records), studied, station.own);
}

}  // namespace forecourse::decide
