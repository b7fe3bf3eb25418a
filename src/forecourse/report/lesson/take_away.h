#pragma once

#include <string>

#include "forecourse/site/site.h"

namespace forecourse::report {

/// What a lesson that needs no program carries.
struct TakeAway {
  std::string name;    ///< of the station
  std::string site;    ///< text of the site file
  std::string lesson;  ///< text of a lesson of one's own; empty: the built-in one
  site::Display display = site::Display::us;
  std::string engine;  ///< packed, as wasm/pack.py writes it
};

/// The page of the lesson with a station and the engine in it: one file that loads nothing.
///
/// \param page built from web/lesson.html
/// \return empty, if the page has no end of its body to put them before
[[nodiscard]] std::string take_away_page(const std::string& page, const TakeAway& carried);

}  // namespace forecourse::report
