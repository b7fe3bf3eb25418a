#include <algorithm>

#include "forecourse/checks/figures/each_part.h"
#include "forecourse/checks/figures/sumps.h"
#include "forecourse/checks/rules/bound_rules.h"
#include "forecourse/handover/sheets/source.h"
#include "forecourse/site/places.h"

// Walk-throughs: what the rule lists, a row for each part of this station, and what other rules ask for as often.

namespace forecourse::handover {
namespace {

using checks::BoundRequirement;
using checks::Finding;

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

SheetSection section(const char* id, const char* title, const char* note) {
  SheetSection out;
  out.id = id;
  out.title = title;
  out.notes.emplace_back(note);
  return out;
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

bool recurs(const checks::Period& period, const checks::Period& most) {
  const auto days = [](const checks::Period& one) { return 366 * one.years + 31 * one.months + one.days; };
  return days(period) <= days(most);
}

RowLimit limit_of(const Finding& finding) {
  RowLimit out;
  out.words = finding.requirement;
  out.clause = finding.clause;
  out.edition = finding.edition;
  out.verified = finding.clause_verified;
  out.binds = true;
  return out;
}

SheetRow due_row(const Finding& finding, const std::string& who) {
  SheetRow row = yes_no_row(finding.rule, finding.requirement, finding.subject, {});
  row.limit = limit_of(finding);
  row.who = who;
  row.where = finding.where;
  if (finding.value && finding.unit == "s") {
    row.figures.push_back({"since it was last done", Amount::time, *finding.value});
  } else {
    row.words = "not known when it was last done";
  }
  return row;
}

/// Adds what a rule found of each part that it applies to.
void add_due(const SheetSource& source, const BoundRequirement& rule, SheetSection& out) {
  for (const checks::FindingSet& set : source.checked().sets) {
    if (set.id != rule.set->id.text) continue;
    for (const Finding& finding : set.findings) {
      const bool applies = finding.state != checks::FindingState::does_not_apply;
      if (applies && finding.rule == rule.entered->id.text)
        out.rows.push_back(due_row(finding, rule.entered->who.text));
    }
  }
}

/// What the rule sets of the station ask for as often: longer than `least`, no longer than `most`.
SheetSection due_by_rules(const SheetSource& source, const checks::Period& least, const checks::Period& most) {
  SheetSection out = section("by-rule", "Asked for by rule",
                             "Each row is one requirement on one part, with how long ago it was last done as far as is "
                             "entered or recorded.");
  const auto asked = [&](const BoundRequirement& rule) {
    if (!rule.every || recurs(*rule.every, least) || !recurs(*rule.every, most)) return false;
    const bool walk = rule.figure->id == "walked-30-days" || rule.figure->id == "walked-annual";
    return !walk && source.lives_under(rule.set->id.text);
  };
  for (const auto& rules : checks::built_in_rules()) {
    for (const BoundRequirement& rule : rules) {
      if (asked(rule)) add_due(source, rule, out);
    }
  }
  return out;
}

/// A yearly test that comes with the line tests, of each part. The row asks whether it was done; a test is kept from
/// the rows that are measured alone.
void add_yearly_test(const SheetSource& source, std::string_view rule, SheetSection& out) {
  const bool elsewhere = !source.site.rules.empty() && !source.lives_under("us-federal");
  if (elsewhere) return;
  for (const checks::FindingSet& set : source.checked().sets) {
    for (const Finding& finding : set.findings) {
      if (finding.rule != rule || finding.state == checks::FindingState::does_not_apply) continue;
      SheetRow row = due_row(finding, "a certified tester");
      row.limit.binds = source.binds(finding.clause);
      out.rows.push_back(std::move(row));
    }
  }
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
  keep(due_by_rules(source, {}, {0, 1, 0}), out);
  keep(dispenser_walk(source), out);
  end(out);
  return out;
}

Sheet annual_sheet(const SheetSource& source) {
  Sheet out = sheet(SheetKind::annual, "Yearly walk-through");
  keep(sump_walk(source), out);
  SheetSection by_rule = due_by_rules(source, {0, 1, 0}, {1, 0, 0});
  add_yearly_test(source, "leak-detector-yearly", by_rule);
  add_yearly_test(source, "line-yearly", by_rule);
  keep(std::move(by_rule), out);
  end(out);
  return out;
}

}  // namespace forecourse::handover
