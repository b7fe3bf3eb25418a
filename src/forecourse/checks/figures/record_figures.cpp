#include <fmt/format.h>

#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/tested.h"

namespace forecourse::checks {
namespace {

// Walk-throughs, by the records

/// One in which everything was out of order proves nothing until it was mended and looked at again.
bool all_out_of_order(const site::records::Inspection& one) {
  return !one.items.empty() &&
         std::all_of(one.items.begin(), one.items.end(),
                     [](const site::records::Inspected& item) { return !item.in_order.value_or(true); });
}

template <const char* kind>
std::vector<FigureAt> walked(const Facts& facts) {
  MaybeDay last;
  if (facts.records != nullptr) {
    for (const site::records::Inspection& one : facts.records->inspections) {
      if (one.kind.text == kind && !all_out_of_order(one)) last = later_of(last, one.at.day);
    }
  }
  return {entered_day("station", {}, last, fmt::format("give the records, with inspections of the kind {}", kind))};
}
constexpr char every_30_days[] = "30-day";
constexpr char annual[] = "annual";

// How long records are kept

std::vector<FigureAt> kept(const Facts& facts, site::Maybe<Duration> site::RecordsKept::*which, const char* enter) {
  const auto& operations = facts.site.operations;
  const bool entered = operations && operations->records_kept;
  const SourceSpan where = entered ? operations->records_kept->where : operations ? operations->where : SourceSpan{};
  return {entered_amount("station", where, entered ? (*operations->records_kept).*which : std::nullopt, enter)};
}

std::vector<FigureAt> monitoring(const Facts& facts) {
  return kept(facts, &site::RecordsKept::monitoring, "enter operations.records_kept, with monitoring");
}
std::vector<FigureAt> operability(const Facts& facts) {
  return kept(facts, &site::RecordsKept::operability, "enter operations.records_kept, with operability");
}
std::vector<FigureAt> claims(const Facts& facts) {
  return kept(facts, &site::RecordsKept::claims, "enter operations.records_kept, with claims");
}
std::vector<FigureAt> repairs(const Facts& facts) {
  return kept(facts, &site::RecordsKept::repairs, "enter operations.records_kept, with repairs");
}
std::vector<FigureAt> schedules(const Facts& facts) {
  return kept(facts, &site::RecordsKept::schedules, "enter operations.records_kept, with schedules");
}
std::vector<FigureAt> throughput_ready(const Facts& facts) {
  return kept(facts, &site::RecordsKept::throughput_ready, "enter operations.records_kept, with throughput_ready");
}

std::vector<FigureAt> hand_held(const Facts& facts) {
  const auto& operations = facts.site.operations;
  return {last_tested(facts, "station", operations ? operations->where : SourceSpan{},
                      operations ? operations->hand_held_tested : std::nullopt,
                      {site::records::TestKind::hand_held, {"station"}}, "enter operations.hand_held_tested")};
}

// Releases

using Incidents = std::vector<site::records::Incident>;

std::string short_name(const site::records::Incident& incident) {
  return fmt::format("{} of {}{}", incident.kind.text, text(incident.at.day),
                     incident.part.empty() ? "" : ", " + incident.part.text);
}

/// The time of day, where it is known: " at 14:05".
std::string clock(const site::records::Incident& incident) {
  if (!incident.at.time) return {};
  const auto minutes = static_cast<int>(from_si(incident.at.time->si(), "min"));
  return fmt::format(" at {:02}:{:02}", minutes / 60, minutes % 60);
}

/// Of two of one kind and day at one part, each has its time and its number.
std::string name_of(const Incidents& all, const site::records::Incident& incident) {
  const std::string name = short_name(incident);
  int count = 0;
  int number = 0;
  for (const site::records::Incident& one : all) {
    if (short_name(one) != name) continue;
    ++count;
    if (&one <= &incident) ++number;
  }
  return count == 1 ? name : fmt::format("{}{}, number {}", name, clock(incident), number);
}

template <class Read>
std::vector<FigureAt> each_incident(const Facts& facts, Read read) {
  std::vector<FigureAt> out;
  if (facts.records == nullptr) return out;
  for (const site::records::Incident& incident : facts.records->incidents) {
    FigureAt one;
    one.subject = name_of(facts.records->incidents, incident);
    one.where = incident.at.day.where;
    read(incident, one);
    out.push_back(std::move(one));
  }
  return out;
}

std::vector<FigureAt> released(const Facts& facts) {
  return each_incident(facts, [](const site::records::Incident& incident, FigureAt& out) {
    if (incident.released) {
      out.value = incident.released->si();
    } else {
      out.enter = "record how much was released";
    }
  });
}

std::vector<FigureAt> reported(const Facts& facts) {
  return each_incident(facts, [](const site::records::Incident& incident, FigureAt& out) {
    out.fact = incident.reported;
    if (!out.fact) out.enter = "record whether it was reported";
  });
}

}  // namespace

std::vector<Figure> record_figures() {
  return {
      day_figure("walked-30-days", "last walk-through of every 30 days", walked<every_30_days>),
      day_figure("walked-annual", "last yearly walk-through", walked<annual>),
      day_figure("hand-held-tested", "last test of electronic hand-held gear that detects leaks", hand_held),
      time_figure("kept-monitoring", "time for which results of monitoring are kept", monitoring),
      time_figure("kept-operability", "time for which yearly tests of what detects leaks are kept", operability),
      time_figure("kept-claims", "time for which performance claims are kept", claims),
      time_figure("kept-repairs", "time for which papers on calibration and repair are kept", repairs),
      time_figure("kept-schedules", "time for which the maker's schedules are kept", schedules),
      {"throughput-ready", "time until records of throughput are at hand", FigureKind::amount, &Duration::kind(), "s",
       Measured::fuel, throughput_ready},
      {"released", "fuel released in an incident", FigureKind::amount, &Volume::kind(), "m3", Measured::fuel, released},
      fact_figure("release-reported", "an incident was reported to the authority", reported),
  };
}

}  // namespace forecourse::checks
