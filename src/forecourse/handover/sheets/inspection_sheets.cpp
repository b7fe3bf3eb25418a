#include <algorithm>

#include "forecourse/base/unit_text.h"
#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/sumps.h"
#include "forecourse/checks/rules/period.h"
#include "forecourse/handover/calendar/calendar.h"
#include "forecourse/handover/calendar/proofs.h"
#include "forecourse/handover/sheets/readings.h"
#include "forecourse/handover/sheets/source.h"
#include "forecourse/site/places.h"

// Walk-throughs: what the rule lists, a row for each part of this station, and what other rules ask for as often.

namespace forecourse::handover {
namespace {

/// A thing to look for, in words.
struct Look {
  const char* id;
  const char* what;
};

void look(const std::string& part, const std::string& path, std::initializer_list<Look> looks, const RowLimit& asked,
          const std::string& who, SheetSection& out) {
  for (const Look& one : looks) {
    SheetRow row = yes_no_row(one.id, one.what, part, path);
    row.limit = asked;
    row.who = who;
    out.rows.push_back(std::move(row));
  }
}

SheetSection spill_walk(const SheetSource& source) {
  const RowLimit asked = source.limit("walked-30-days");
  const std::string who = source.who("walked-30-days");
  SheetSection out = section("spill", "Spill containers and fills",
                             "What was found in it is taken out and disposed of as waste. Where deliveries come less "
                             "often than every 30 days, before each of them.");
  checks::each_fill_of(source.site, [&](const std::string& name, const site::Fill& fill, const site::Tank& tank) {
    if (!fill.spill_container) return;
    const std::string path = "tank." + tank.id.text + ".fill";
    look(name, path,
         {{"spill-damage", "no damage to the spill container"},
          {"spill-liquid", "no liquid and no debris in it"},
          {"fill-free", "nothing blocks the fill pipe"},
          {"fill-cap", "the cap sits securely on the fill pipe"}},
         asked, who, out);
    if (fill.spill_container->double_wall.value_or(false)) {
      look(name, path, {{"spill-interstice", "no leak between its two walls"}}, asked, who, out);
    }
  });
  return out;
}

SheetSection detection_walk(const SheetSource& source) {
  const RowLimit asked = source.limit("walked-30-days");
  const std::string who = source.who("walked-30-days");
  SheetSection out = section("detection", "Gear that detects releases",
                             "An alarm is looked into before it is set back; a part that fails is never bypassed.");
  const auto add = [&](const std::string& part, const std::string& path) {
    look(part, path,
         {{"detection-alarm", "works, with no alarm or unusual condition"},
          {"detection-records", "its records are looked at and up to date"}},
         asked, who, out);
  };
  for (const site::Tank& tank : source.site.tanks) {
    if (tank.gauge) add(tank.id.text, "tank." + tank.id.text + ".gauge");
  }
  for (const site::Pump& pump : source.site.pumps) {
    if (pump.leak_detector) add(pump.id.text, "pump." + pump.id.text + ".leak_detector");
  }
  checks::each_sump_of(source.site, [&](const std::string& id, const site::Sump& sump) {
    if (sump.sensor || sump.sensor_height) add(id + " sensor", "sump of " + id);
  });
  return out;
}

SheetSection sump_walk(const SheetSource& source) {
  const RowLimit asked = source.limit("walked-annual");
  const std::string who = source.who("walked-annual");
  SheetSection out = section("sump", "Sumps", "Looked at from above with the lid off. Nobody goes in.");
  checks::each_sump_of(source.site, [&](const std::string& id, const site::Sump& sump) {
    look(id, "sump of " + id,
         {{"sump-damage", "no damage and no leak into the sump or out of it"},
          {"sump-liquid", "no liquid and no debris in it"}},
         asked, who, out);
    if (sump.double_wall.value_or(false)) {
      look(id, "sump of " + id, {{"sump-interstice", "no leak between its two walls"}}, asked, who, out);
    }
  });
  look("station", {}, {{"hand-held", "hand-held gear that detects releases works and is sound"}}, asked, who, out);
  return out;
}

SheetSection dispenser_walk(const SheetSource& source) {
  SheetSection out = section("dispenser", "Dispensers and hoses", "Common practice, unless a clause stands beside it.");
  for (const site::Dispenser& dispenser : source.site.dispensers) {
    const std::string path = "dispenser." + dispenser.id.text;
    look(dispenser.id.text, path,
         {{"dispenser-outside", "no leak, no loose panel, not moved from its place"},
          {"hoses-sound", "hoses, swivels, nozzles and breakaways sound and dry"}},
         {}, "the operator", out);
  }
  for (const site::EmergencyStop& stop : source.site.emergency_stops) {
    look(stop.id.text, "emergency_stop." + stop.id.text, {{"stop-in-reach", "in plain reach, with its sign"}},
         source.limit("emergency-stop-sign"), "the operator", out);
  }
  for (const site::Extinguisher& one : source.site.extinguishers) {
    look(one.id.text, "extinguisher." + one.id.text, {{"extinguisher", "in its place, charged, and its mark in date"}},
         {}, "the operator", out);
  }
  return out;
}

RowLimit limit_of(const SheetSource& source, const Duty& duty) {
  RowLimit out;
  out.words = duty.what;
  out.clause = duty.clause;
  out.edition = duty.edition;
  out.verified = duty.clause_verified;
  out.binds = source.binds(duty.set, duty.clause);
  return out;
}

/// When it was last done, as the calendar has it, and what else that says.
void tell_day(const Duty& duty, const site::Date& today, SheetRow& row) {
  const bool is_done = duty.last_done && !checks::is_before(today, *duty.last_done);
  if (is_done) {
    row.figures.push_back(
        {"since it was last done", Amount::time, to_si(checks::days_between(*duty.last_done, today), "d")});
  }
  if (duty.state == DutyState::failed) {
    row.words = duty.reason + ": " + duty.enter;
  } else if (duty.state == DutyState::not_determined || (duty.last_done && !is_done)) {
    row.words = duty.reason;
  } else if (!is_done) {
    row.words = "not known when it was last done";
  }
}

/// A duty as a row that asks whether it was done. A test is kept from the rows that are measured alone.
SheetRow due_row(const SheetSource& source, const Duty& duty) {
  SheetRow row = yes_no_row(duty.rule, duty.what, duty.subject, {});
  row.limit = limit_of(source, duty);
  row.who = duty.by_whom;
  row.where = duty.where;
  tell_day(duty, source.facts.today, row);
  return row;
}

bool has_row(const SheetSection& section, const SheetRow& row) {
  return std::any_of(section.rows.begin(), section.rows.end(),
                     [&](const SheetRow& one) { return one.part == row.part && one.what == row.what; });
}

/// Whether a duty is the walk-through that the sheet itself is.
bool is_walk(const Duty& duty, SheetKind kind) {
  const std::optional<Proof> proof = proof_of(duty);
  return proof && proof->inspection == record_kind(kind);
}

/// What comes back and is led through on this sheet.
SheetSection due_by_rules(const SheetSource& source, SheetKind kind) {
  SheetSection out = section("by-rule", "Asked for by rule",
                             "Each row is one requirement on one part, with how long ago it was last done as far as is "
                             "entered or recorded. What failed or is overdue comes first.");
  for (const Duty& duty : calendar_of(source.checked()).duties) {
    if (duty.sheet != word(kind) || is_walk(duty, kind)) continue;
    SheetRow row = due_row(source, duty);
    if (!has_row(out, row)) out.rows.push_back(std::move(row));
  }
  return out;
}

Sheet sheet(SheetKind kind, const char* title) {
  Sheet out;
  out.kind = kind;
  out.title = title;
  out.cautions = {
      "It advises. A look is no test; what is found in fault is mended by licensed trades and tested again by "
      "certified "
      "testers.",
      "The edition of the code that the local authority has adopted rules.",
      "Liquid in a sump, a smell of fuel, an alarm that comes back: stop the pump, clear people away, call the fire "
      "service, then write.",
      "Nobody goes into a sump for a look."};
  return out;
}

void keep(SheetSection&& one, Sheet& out) {
  if (!one.rows.empty()) out.sections.push_back(std::move(one));
}

void end(Sheet& out) {
  SheetSection last = section("end", "Walked by", "");
  last.notes.clear();
  last.rows = {text_row("found", "what was found, and what was done about it"), signature_row("walked by")};
  out.sections.push_back(std::move(last));
}

}  // namespace

Sheet thirty_day_sheet(const SheetSource& source) {
  Sheet out = sheet(SheetKind::thirty_day, "Walk-through every 30 days");
  keep(spill_walk(source), out);
  keep(detection_walk(source), out);
  keep(due_by_rules(source, SheetKind::thirty_day), out);
  keep(dispenser_walk(source), out);
  end(out);
  return out;
}

Sheet annual_sheet(const SheetSource& source) {
  Sheet out = sheet(SheetKind::annual, "Yearly walk-through");
  keep(sump_walk(source), out);
  keep(due_by_rules(source, SheetKind::annual), out);
  end(out);
  return out;
}

}  // namespace forecourse::handover
