#include "forecourse/checks/figures/each_part.h"
#include "forecourse/handover/sheets/sheets.h"
#include "forecourse/handover/sheets/source.h"
#include "forecourse/site/places.h"

// Back to service after an incident: what comes first, what is tested again, by whom, with the figures of the station.

namespace forecourse::handover {
namespace {

using site::records::TestKind;

/// A step that somebody does and ticks.
struct Step {
  const char* id;
  const char* what;
  const char* who;
  const char* figure;  ///< that a rule asks it on; empty: none
};

SheetSection steps(const SheetSource& source, const char* id, const char* title, const char* note,
                   std::initializer_list<Step> all) {
  SheetSection out;
  out.id = id;
  out.title = title;
  out.ordered = true;
  if (*note != '\0') out.notes.emplace_back(note);
  for (const Step& one : all) {
    SheetRow row = yes_no_row(one.id, one.what, {}, {});
    row.who = one.who;
    if (*one.figure != '\0') row.limit = source.limit(one.figure);
    if (row.limit.at_most) row.words = row.limit.words;
    out.rows.push_back(std::move(row));
  }
  return out;
}

constexpr const char* tester = "a certified tester";
constexpr const char* electrician = "a licensed electrician";
constexpr const char* technician = "a licensed technician";
constexpr const char* operating = "the operator";

SheetSection at_once(const SheetSource& source) {
  SheetSection out = steps(
      source, "at-once", "At once", "",
      {{"stop", "the pump is stopped, at the emergency stop", "whoever is there", ""},
       {"clear", "people are cleared away, and engines and flames kept out", "whoever is there", ""},
       {"call", "the fire service is called", "whoever is there", ""},
       {"stays-off", "the power stays off until the fire service and the electrician give it free", electrician, ""},
       {"told", "the authority is told of what escaped, or may have", operating, "release-reported"}});
  out.rows.push_back(text_row("when", "when it happened, when the pump was stopped, who saw it"));
  out.rows.push_back(text_row("seen", "what was seen: parts, liquid, alarms; photographs taken"));
  for (const site::EmergencyStop& stop : source.site.emergency_stops) {
    SheetRow row = told_row("stop-at", "emergency stop", stop.id.text, "emergency_stop." + stop.id.text);
    if (stop.position) {
      row.figures = {{"on plan, first axis", Amount::height, stop.position->x.si()},
                     {"second axis", Amount::height, stop.position->y.si()}};
    } else {
      row.words = "its place is not entered";
    }
    row.where = stop.where;
    out.rows.push_back(std::move(row));
  }
  return out;
}

SheetSection struck(const SheetSource& source) {
  return steps(
      source, "struck", "A dispenser was struck", "Only where the fire service has given the place free.",
      {{"locked", "the pump of every product at this dispenser is locked out", electrician, ""},
       {"looked", "the sump beneath is looked into from above; nobody goes in", technician, ""},
       {"replaced", "a shear valve that broke or cracked is replaced whole as its instructions say, never put back",
        technician, ""},
       {"anchors", "anchors, stabilizer bar and mounting bolts are inspected", technician, "shear-valve-anchored"},
       {"trips", "every shear valve of the dispenser is inspected and tripped; no product flows", technician,
        "shear-valve-tested-since-hit"},
       {"line", "the line and the riser are tested for tightness", tester, "repair-to-test"},
       {"detector", "the leak detector of the line is tested by a simulated leak", tester, ""},
       {"sump", "the sump is inspected, and tested where it or its seals were moved", tester, "sump-repair-to-test"},
       {"hoses", "hoses, breakaways and nozzles are inspected; continuity is measured", technician, ""},
       {"meters", "its meters are proved", "a licensed service person", ""},
       {"wiring", "wiring and the emergency stop are inspected and tested", electrician, "emergency-stop-tested"},
       {"flow", "the flow of each hose is read against the figure of this sheet", technician, ""},
       {"given-free", "the dispenser is given free, and watched through the first sale", technician, ""}});
}

SheetSection drive_off(const SheetSource& source) {
  SheetSection out =
      steps(source, "drive-off", "A vehicle drove off with a hose", "",
            {{"bagged", "the dispenser is out of use, its nozzles hung up and bagged", operating, ""},
             {"breakaway", "the breakaway is joined again only where its instructions allow it, else replaced",
              technician, ""},
             {"hose", "hose, swivel and nozzle are inspected; a hose that was stretched is replaced", technician, ""},
             {"anchors", "the dispenser and its anchors have not moved", technician, "shear-valve-anchored"},
             {"trips", "every shear valve of the dispenser is inspected and tripped; no product flows", technician,
              "shear-valve-tested-since-hit"},
             {"continuity", "continuity from spout to frame is measured", technician, ""}});
  SheetRow purged = amount_row("purged", "volume drawn through the hose that was joined again", {}, {}, Amount::volume);
  purged.limit = source.limit("breakaway-purged");
  purged.words = purged.limit.clause.empty() ? "as the instructions of the breakaway ask" : "";
  SheetRow watched = amount_row("watched", "time for which the display stood still, the hose pulled and twisted", {},
                                {}, Amount::time);
  watched.limit = source.limit("breakaway-watched");
  watched.words = watched.limit.clause.empty() ? "as the instructions of the breakaway ask" : "";
  out.rows.push_back(std::move(purged));
  out.rows.push_back(std::move(watched));
  return out;
}

SheetSection sump_leak(const SheetSource& source) {
  return steps(
      source, "sump-leak", "Liquid in a sump", "What it is, fuel or water, is not guessed.",
      {{"off", "the pumps whose lines enter the sump stay off", operating, ""},
       {"told", "a release that is suspected is reported", operating, "release-reported"},
       {"source", "the place where it comes from is found", technician, ""},
       {"waste", "the liquid is taken out and disposed of as waste, never put back into a tank", "a licensed hauler",
        ""},
       {"mended", "the part is mended or replaced", technician, ""},
       {"tight", "sump and seals are tested", tester, "sump-repair-to-test"},
       {"sensor", "the sensor alarms when it is wetted, and stops what it must stop", tester, "sump-sensor-tested"},
       {"line", "the line is tested for tightness, its leak detector by a simulated leak", tester, "repair-to-test"}});
}

SheetSection overfilled(const SheetSource& source) {
  return steps(
      source, "overfill", "A delivery spilled or overfilled", "",
      {{"closed", "the driver has shut the truck; no connection that is under pressure is opened", "the driver", ""},
       {"told", "a spill that must be reported is reported", operating, "release-reported"},
       {"level", "the level of the tank is read; nothing is sold until it is below its overfill level", operating, ""},
       {"container", "spill container and fill are emptied, inspected and tested", tester, "spill-repair-to-test"},
       {"device", "the overfill device is inspected and acts at its level", tester, "spill-repair-to-test"},
       {"soil", "whether fuel reached soil or a drain is settled by the authority", operating, ""}});
}

/// What is read again, with the figures of the station.
SheetSection figures(const SheetSource& source) {
  SheetSection out;
  out.id = "figures";
  out.title = "Read again";
  out.notes = {"Only the rows of the parts that were hit, mended or moved."};
  checks::each_inlet_of(source.site, [&](const std::string& id, const site::Inlet& inlet, const site::Dispenser& at) {
    if (!inlet.shear_valve) return;
    SheetRow trip = yes_no_row("shear-trip", "shear valve tripped by hand: it shuts, and no product flows", id,
                               "dispenser." + at.id.text);
    trip.test = TestKind::shear_valve_trip;
    trip.limit = source.limit("shear-valve-tested-since-hit");
    trip.who = technician;
    out.rows.push_back(std::move(trip));
  });
  for (SheetRow& row : flow_section(source).rows) {
    if (row.id == "flow-alone") out.rows.push_back(std::move(row));
  }
  for (SheetRow& row : line_section(source).rows) {
    if (row.id == "line-pressure" || row.id == "line-tight") out.rows.push_back(std::move(row));
  }
  for (SheetRow& row : leak_detector_section(source).rows) {
    if (row.id == "detector-acts") out.rows.push_back(std::move(row));
  }
  if (source.studied.containment) {
    for (const studies::ContainedSump& sump : source.studied.containment->sumps) {
      if (!sump.problem.empty()) continue;
      SheetRow row = told_row("sump-volume", "volume of the sump up to its brim", sump.owner, {});
      row.amount = Amount::volume;
      set_value(row, sump.brim, "containment study", {});
      if (sump.at_sensor) row.figures.push_back({"when its sensor trips", Amount::volume, *sump.at_sensor});
      if (sump.at_seal) row.figures.push_back({"at its lowest seal", Amount::volume, *sump.at_seal});
      out.rows.push_back(std::move(row));
    }
  }
  out.rows.push_back(signature_row("given free for service by"));
  return out;
}

}  // namespace

Sheet return_to_service_sheet(const SheetSource& source) {
  Sheet out;
  out.kind = SheetKind::return_to_service;
  out.title = "Return to service after an incident";
  out.first = first_in_an_emergency();
  out.cautions = {"It advises. The fire service, the authority and licensed trades decide; certified testers test.",
                  "It tells no way into a sump and no work with heat: both need a permit and those trained for it.",
                  "No leak detector, sensor, shear valve or overfill device is taken out of action to open sooner.",
                  "A figure beside a blank is computed from what was entered. It is no test."};
  out.sections = {at_once(source),   struck(source),     drive_off(source),
                  sump_leak(source), overfilled(source), figures(source)};
  return out;
}

}  // namespace forecourse::handover
