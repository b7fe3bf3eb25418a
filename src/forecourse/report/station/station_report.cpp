#include "forecourse/report/station/station_report.h"

#include <algorithm>

#include "forecourse/report/containment/containment_report.h"
#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/report/flow/flow_view.h"
#include "forecourse/report/html/page.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/ledger/ledger_report.h"
#include "forecourse/report/ledger/ledger_view.h"
#include "forecourse/report/line_test/line_test_report.h"
#include "forecourse/report/svg/text.h"
#include "forecourse/report/tank/tank_report.h"
#include "forecourse/report/vapor/vapor_report.h"

namespace forecourse::report {
namespace {

bool contains(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// What a report tells of, as far as its cautions go by it.
struct ToldOf {
  bool containment = false;
  bool tank = false;
  bool flotation = false;
  bool vapor = false;
  bool line_test = false;
  bool ledger = false;
  bool incident = false;
};

/// The sections as HTML, each under an anchor of its own.
std::string body(const StationSource& source, const ReportChoice& choice, ToldOf& told) {
  std::string out;
  for (const StationSection& section : station_sections(source.site)) {
    const bool asked = contains(choice.sections, section.id);
    if (!asked && !choice.sections.empty()) continue;
    std::string html = section.write(source);
    if (!html.empty()) {
      told.containment = told.containment || section.id == "containment";
      told.tank = told.tank || section.id == "tank";
      told.flotation = told.flotation || section.id == "flotation";
      told.vapor = told.vapor || section.id == "vapor";
      told.line_test = told.line_test || section.id == "line-test";
      told.ledger = told.ledger || section.id == "ledger";
      told.incident = told.incident || section.id.starts_with("incident-");
    }
    if (html.empty() && asked)
      html = html::heading(2, section.name) + html::paragraph("Left out: " + section.why_empty + ".");
    if (!html.empty()) out += "<section id=\"" + svg::escape(section.id) + "\">\n" + html + "</section>\n";
  }
  return out;
}

/// What any of the studies in the report is to be read with, none twice.
std::vector<std::string> cautions(const ToldOf& told) {
  std::vector<std::string> out = flow_cautions();
  const auto add = [&](const std::vector<std::string>& more) {
    for (const std::string& caution : more) {
      if (!contains(out, caution)) out.push_back(caution);
    }
  };
  if (told.containment) add(containment_cautions());
  if (told.tank) add(tank_cautions());
  if (told.flotation) add(flotation_cautions());
  if (told.vapor) add(vapor_cautions());
  if (told.line_test) add(line_test_cautions());
  if (told.ledger) add(ledger_cautions());
  if (told.incident) add(incident_cautions());
  return out;
}

/// Whether the report tells of a delivery that, as it was entered, stalls or ends under pressure.
bool told_pressure(const StationStudies& studies, const ReportChoice& choice) {
  for (std::size_t i = 0; i < studies.deliveries.size(); ++i) {
    const bool told = choice.sections.empty() || contains(choice.sections, "delivery-" + std::to_string(i + 1));
    const std::vector<studies::DeliveryRun>& runs = studies.deliveries[i].runs;
    if (told && !runs.empty() && runs.front().under_pressure) return true;
  }
  return false;
}

/// What is told of beside the sections: conditions that raise a caution of their own.
struct Raised {
  bool pressure = false;   ///< a drop stalls or ends under pressure
  bool shortfall = false;  ///< a month of the ledger exceeds its limit
};

std::string caution(const ToldOf& told, const Raised& raised) {
  const std::vector<std::string> all = flow_cautions();
  std::string first = raised.pressure ? std::string(stalled_caution) + " " : std::string();
  if (raised.shortfall) first += std::string(ledger_first) + " ";
  first += told.incident ? std::string("If it has happened: ") + incident_first + " " : "";
  if (told.flotation) first += std::string(flotation_first) + " ";
  return first + "Computed from what was entered. It advises; nothing computed is a test. " + all[1];
}

CellTexts filled(CellTexts cells, const site::Site& site, const StationFacts& facts) {
  if (cells["station"].empty()) cells["station"] = site.name.text;
  if (cells["date"].empty()) cells["date"] = facts.date;
  return cells;
}

html::Page around(const site::Site& site, const StationFacts& facts, const CellTexts& cells) {
  html::Page page;
  const std::string& station = cells.at("station");
  page.station = station.empty() ? "Station without a name" : station;
  page.study = "Course of the fuel, from the tanker to the vehicle";
  page.title = printed(cells);
  if (!facts.texts.empty()) page.cells.emplace_back("Site file", facts.texts.front().name);
  page.cells.emplace_back("Units", site.display == site::Display::us ? "US customary" : "SI");
  page.cells.emplace_back("Made with", std::string("forecourse ") + FORECOURSE_VERSION);
  for (const char* name : {"drawing number", "revision", "date"}) {
    const auto found = cells.find(name);
    if (found == cells.end() || found->second.empty()) continue;
    page.foot.push_back((name == std::string("date") ? "" : std::string(name) + " ") + found->second);
  }
  return page;
}

}  // namespace

std::string station_report(const StationStudies& studies, const site::Site& site, const StationFacts& facts,
                           const ReportChoice& choice) {
  const StationSource source{studies, site, facts.texts, facts.before, facts.command};
  html::Page page = around(site, facts, filled(choice.cells, site, facts));
  ToldOf told;
  page.body = body(source, choice, told);
  page.caution = caution(
      told, {told_pressure(studies, choice), told.ledger && studies.ledger && ledger_falls_short(*studies.ledger)});
  page.body += html::heading(2, "Cautions") + html::list(cautions(told));
  return html::page(page);
}

}  // namespace forecourse::report
