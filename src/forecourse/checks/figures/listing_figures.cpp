#include <algorithm>
#include <cctype>
#include <functional>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/figure.h"

namespace forecourse::checks {
namespace {

// Whether parts are listed to a standard of what they do. The tables below say which standards those are; whether a
// listing that a site file states is true is nothing that a program could tell.

using Standards = std::vector<std::string_view>;
using Tell = std::function<void(std::string, SourceSpan, const std::vector<site::Name>&)>;

bool is_letter_or_digit(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0; }

/// "UL 842:2015" and "UL 842A" are of "UL 842": a letter tells for which fuels. "UL 8420" is not.
bool is_of(std::string_view written, std::string_view standard) {
  if (!written.starts_with(standard)) return false;
  written.remove_prefix(standard.size());
  if (!written.empty() && std::isupper(static_cast<unsigned char>(written.front())) != 0) written.remove_prefix(1);
  return written.empty() || !is_letter_or_digit(written.front());
}

FigureAt listing(std::string subject, SourceSpan where, const std::vector<site::Name>& listed_to,
                 const Standards& standards) {
  const auto fits = [&](const site::Name& one) {
    return std::any_of(standards.begin(), standards.end(), [&](auto standard) { return is_of(one.text, standard); });
  };
  site::Fact is;
  if (!listed_to.empty()) is = std::any_of(listed_to.begin(), listed_to.end(), fits);
  return entered_fact(std::move(subject), where, is, "enter listed_to of it, as its plate or its papers say");
}

// The parts of one kind.

void shear_valves(const site::Site& site, const Tell& tell) {
  each_inlet_of(site, [&](const std::string& id, const site::Inlet& inlet, const site::Dispenser&) {
    if (inlet.shear_valve) tell(id, inlet.shear_valve->where, inlet.shear_valve->listed_to);
  });
}

template <std::optional<site::Part> site::Hose::*part>
void parts(const site::Site& site, const Tell& tell) {
  each_hose_of(site, [&](const site::Hose& hose, const site::Dispenser&) {
    if (hose.*part) tell(hose.id.text, (hose.*part)->where, (hose.*part)->listed_to);
  });
}

void curb_hoses(const site::Site& site, const Tell& tell) {
  each_hose_of(site, [&](const site::Hose& hose, const site::Dispenser&) {
    if (hose.curb) tell(hose.id.text, hose.curb->where, hose.curb->listed_to);
  });
}

void dispensers(const site::Site& site, const Tell& tell) {
  for (const site::Dispenser& one : site.dispensers) tell(one.id.text, one.where, one.listed_to);
}

void recoveries(const site::Site& site, const Tell& tell) {
  for (const site::Dispenser& one : site.dispensers) {
    if (one.vapor_recovery) tell(one.id.text, one.vapor_recovery->where, one.vapor_recovery->listed_to);
  }
}

void pumps(const site::Site& site, const Tell& tell) {
  for (const site::Pump& one : site.pumps) tell(one.id.text, one.where, one.listed_to);
}

void lines(const site::Site& site, const Tell& tell) {
  for (const site::Line& one : site.lines) tell(one.id.text, one.where, one.pipe.listed_to);
}

void sumps(const site::Site& site, const Tell& tell) {
  each_sump_of(site, [&](const std::string& id, const site::Sump& sump) { tell(id, sump.where, sump.listed_to); });
}

void overfill_valves(const site::Site& site, const Tell& tell) {
  each_fill_of(site, [&](const std::string& id, const site::Fill& fill, const site::Tank&) {
    if (fill.overfill_valve) tell(id, fill.overfill_valve->where, fill.overfill_valve->listed_to);
  });
}

void vent_valves(const site::Site& site, const Tell& tell) {
  each_vent_valve_of(
      site, [&](const std::string& id, const site::VentValve& valve) { tell(id, valve.where, valve.listed_to); });
}

void gauges(const site::Site& site, const Tell& tell) {
  for (const site::Tank& one : site.tanks) {
    if (one.gauge && one.gauge->kind.text == "automatic") tell(one.id.text, one.gauge->where, one.gauge->listed_to);
  }
}

struct Kind {
  void (*each)(const site::Site&, const Tell&);
  std::array<std::string_view, 3> standards;  ///< empty ones do not count
};

template <const Kind& kind>
std::vector<FigureAt> listed(const Facts& facts) {
  Standards standards;
  for (const std::string_view one : kind.standards) {
    if (!one.empty()) standards.push_back(one);
  }
  std::vector<FigureAt> out;
  kind.each(facts.site, [&](std::string subject, SourceSpan where, const std::vector<site::Name>& listed_to) {
    out.push_back(listing(std::move(subject), where, listed_to, standards));
  });
  return out;
}

constexpr Kind us_shear_valve{shear_valves, {"UL 842"}};
constexpr Kind us_breakaway{parts<&site::Hose::breakaway>, {"UL 567"}};
constexpr Kind us_swivel{parts<&site::Hose::swivel>, {"UL 567"}};
constexpr Kind us_hose{curb_hoses, {"UL 330"}};
constexpr Kind us_nozzle{parts<&site::Hose::nozzle>, {"UL 2586"}};
constexpr Kind us_dispenser{dispensers, {"UL 87"}};
constexpr Kind us_pump{pumps, {"UL 79"}};
constexpr Kind us_line{lines, {"UL 971"}};
constexpr Kind us_sump{sumps, {"UL 2447"}};
constexpr Kind us_vent_valve{vent_valves, {"UL 2583"}};
constexpr Kind us_overfill_valve{overfill_valves, {"UL 2583"}};
/// Tanks above ground have standards of their own.
std::vector<FigureAt> buried_tank_listed(const Facts& facts) {
  return each_buried_tank(facts, [](const site::Tank& tank) {
    return listing(tank.id.text, tank.where, tank.listed_to, {"UL 58", "UL 1316", "UL 1746"});
  });
}

constexpr Kind eu_dispenser{dispensers, {"EN 13617-1"}};
constexpr Kind eu_breakaway{parts<&site::Hose::breakaway>, {"EN 13617-2"}};
constexpr Kind eu_shear_valve{shear_valves, {"EN 13617-3"}};
constexpr Kind eu_swivel{parts<&site::Hose::swivel>, {"EN 13617-4"}};
constexpr Kind eu_hose{curb_hoses, {"EN 1360", "EN 13483"}};
constexpr Kind eu_line{lines, {"EN 14125"}};
constexpr Kind eu_overfill_valve{overfill_valves, {"EN 13616", "EN 13616-1", "EN 13616-2"}};
constexpr Kind eu_gauge{gauges, {"EN 13160-5"}};
constexpr Kind eu_recovery{recoveries, {"EN 16321-1"}};

template <const Kind& kind>
Figure figure(std::string_view id, std::string_view words) {
  return {id, words, FigureKind::fact, nullptr, "", Measured::fuel, listed<kind>};
}

}  // namespace

std::vector<Figure> listing_figures() {
  return {
      figure<us_shear_valve>("shear-valve-listed-ul", "a shear valve listed to UL 842"),
      figure<us_breakaway>("breakaway-listed-ul", "a breakaway listed to UL 567"),
      figure<us_swivel>("swivel-listed-ul", "a swivel listed to UL 567"),
      figure<us_hose>("hose-listed-ul", "a curb hose listed to UL 330"),
      figure<us_nozzle>("nozzle-listed-ul", "a nozzle listed to UL 2586"),
      figure<us_dispenser>("dispenser-listed-ul", "a dispenser listed to UL 87"),
      figure<us_pump>("pump-listed-ul", "a pump listed to UL 79"),
      figure<us_line>("line-listed-ul", "a line listed to UL 971"),
      figure<us_sump>("sump-listed-ul", "a sump listed to UL 2447"),
      fact_figure("tank-listed-ul", "a buried tank listed to UL 58, UL 1316 or UL 1746", buried_tank_listed),
      figure<us_vent_valve>("vent-valve-listed-ul", "a vent valve listed to UL 2583"),
      figure<us_overfill_valve>("overfill-valve-listed-ul", "an overfill valve listed to UL 2583"),
      figure<eu_dispenser>("dispenser-listed-en", "a dispenser tested to EN 13617-1"),
      figure<eu_breakaway>("breakaway-listed-en", "a breakaway tested to EN 13617-2"),
      figure<eu_shear_valve>("shear-valve-listed-en", "a shear valve tested to EN 13617-3"),
      figure<eu_swivel>("swivel-listed-en", "a swivel tested to EN 13617-4"),
      figure<eu_hose>("hose-listed-en", "a curb hose tested to EN 1360 or EN 13483"),
      figure<eu_line>("line-listed-en", "a line tested to EN 14125"),
      figure<eu_overfill_valve>("overfill-valve-listed-en", "an overfill valve tested to EN 13616"),
      figure<eu_gauge>("gauge-listed-en", "an automatic gauge tested to EN 13160-5"),
      figure<eu_recovery>("recovery-listed-en", "vapor recovery tested to EN 16321-1"),
  };
}

}  // namespace forecourse::checks
