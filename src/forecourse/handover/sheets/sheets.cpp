#include "forecourse/handover/sheets/sheets.h"

#include <algorithm>

#include "forecourse/handover/sheets/source.h"

namespace forecourse::handover {
namespace {

Sheet make(SheetKind kind, const SheetSource& source) {
  switch (kind) {
    case SheetKind::commissioning:
      return commissioning_sheet(source);
    case SheetKind::thirty_day:
      return thirty_day_sheet(source);
    case SheetKind::annual:
      return annual_sheet(source);
    case SheetKind::return_to_service:
      return return_to_service_sheet(source);
    case SheetKind::delivery_card:
      return delivery_card(source);
    case SheetKind::emergency_card:
      return emergency_card(source);
  }
  return {};
}

bool asked(const SheetOptions& options, SheetKind kind) {
  return options.kinds.empty() || std::find(options.kinds.begin(), options.kinds.end(), kind) != options.kinds.end();
}

}  // namespace

std::vector<std::string> sheet_cautions() {
  return {
      "It advises. A computed figure is no test and no approval.",
      "The edition of the code that the local authority has adopted rules, and so do the equipment's listing and "
      "instructions.",
      "Certified testers do the tests, licensed trades the work.",
      "No barrier is taken out of action for a test longer than the test takes, and none to keep a station running.",
  };
}

std::vector<std::string> first_in_an_emergency() {
  return {"Stop the pump.", "Clear people away.", "Call the fire service."};
}

Sheet commissioning_sheet(const SheetSource& source) {
  Sheet out;
  out.kind = SheetKind::commissioning;
  out.title = "Commissioning";
  out.cautions = sheet_cautions();
  out.cautions.emplace_back(
      "No test with gas on a line that holds fuel. Fuel that is drawn goes into approved containers.");
  out.sections = {flow_section(source),
                  pump_section(source),
                  leak_detector_section(source),
                  line_section(source),
                  shear_valve_section(source),
                  overfill_section(source),
                  spill_section(source),
                  sump_section(source),
                  vent_section(source),
                  stop_section(source),
                  cause_and_effect_section(source),
                  meter_section(source),
                  bonding_section(source)};
  return out;
}

SheetPack make_sheets(const checks::Facts& facts, const checks::Studied& studied, const SheetOptions& options) {
  const SheetSource source(facts, studied, options.agreed);
  SheetPack out;
  out.version = FORECOURSE_VERSION;
  out.day = facts.today;
  out.options = options;
  out.defaults = source.checked().defaults;
  out.warnings = source.checked().warnings;
  for (const SheetKind kind : all_sheet_kinds) {
    if (asked(options, kind)) out.sheets.push_back(make(kind, source));
  }
  return out;
}

}  // namespace forecourse::handover
