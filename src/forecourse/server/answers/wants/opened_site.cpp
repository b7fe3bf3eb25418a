#include "forecourse/server/answers/wants/opened_site.h"

#include <algorithm>

#include "forecourse/site/read.h"

namespace forecourse::server {

std::string read_units(WantReader& want) { return want.word("units", {"us", "si"}); }

OpenedSite open_site(const std::string& text, const std::string& file, const std::string& units) {
  OpenedSite out;
  out.texts = {{file, text}};
  Parsed<site::Site> read = site::read_site(text);
  if (!read.ok()) {
    out.problem = refused(read.diagnostics);
    out.problem["error"] = "the site file cannot be studied: " + out.problem["error"].get<std::string>();
  }
  out.site = std::move(read.value);
  out.warnings = std::move(read.diagnostics);
  if (units == "us") out.site.display = site::Display::us;
  if (units == "si") out.site.display = site::Display::si;
  return out;
}

report::Json without_hose(const site::Site& site) {
  const bool any = std::any_of(site.dispensers.begin(), site.dispensers.end(),
                               [](const site::Dispenser& d) { return !d.hoses.empty(); });
  if (any) return nullptr;
  return refused("the station has no hose, so there is no flow to compute",
                 "add a [[dispenser]] with a [[dispenser.inlet]] and a [[dispenser.hose]]");
}

}  // namespace forecourse::server
