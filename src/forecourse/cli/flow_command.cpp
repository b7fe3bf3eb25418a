#include <algorithm>
#include <filesystem>
#include <optional>
#include <utility>
#include <vector>

#include "forecourse/checks/flow_checks.h"
#include "forecourse/checks/ledger_checks.h"
#include "forecourse/checks/meter_checks.h"
#include "forecourse/checks/tank_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/containment/containment_report.h"
#include "forecourse/report/containment/containment_view.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/flotation/flotation_report.h"
#include "forecourse/report/flotation/flotation_view.h"
#include "forecourse/report/flow/flow_html.h"
#include "forecourse/report/flow/flow_json.h"
#include "forecourse/report/flow/flow_terminal.h"
#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/incident/incident_view.h"
#include "forecourse/report/ledger/ledger_report.h"
#include "forecourse/report/ledger/ledger_view.h"
#include "forecourse/report/line_test/line_test_report.h"
#include "forecourse/report/meter/meter_report.h"
#include "forecourse/report/station/station_report.h"
#include "forecourse/report/tank/tank_report.h"
#include "forecourse/report/vapor/vapor_report.h"
#include "forecourse/report/vapor/vapor_view.h"
#include "forecourse/store/read_records.h"
#include "forecourse/studies/flow/read_flow_options.h"

namespace forecourse::cli {
namespace {

/// Tells of a station without hoses: there is no flow to compute.
bool has_hose(const SiteSource& source) {
  if (report::has_hose(source.site)) return true;
  const Diagnostic none{Severity::error,
                        "the station has no hose, so there is no flow to compute",
                        SourceSpan{0, 0, 0},
                        "add a [[dispenser]] with a [[dispenser.inlet]] and a [[dispenser.hose]]",
                        {}};
  print_error(report::to_text(std::vector<Diagnostic>{none}, source.texts));
  return false;
}

/// What keeps a product from being computed; the others are still told.
std::vector<Diagnostic> errors_of(const std::vector<Diagnostic>& all) {
  std::vector<Diagnostic> errors;
  for (const Diagnostic& one : all) {
    if (one.severity == Severity::error) errors.push_back(one);
  }
  return errors;
}

std::vector<std::pair<std::string, std::vector<std::string>>> in_short(const report::StationStudies& studies,
                                                                       site::Display display, report::Glyphs glyphs) {
  std::vector<std::pair<std::string, std::vector<std::string>>> out;
  if (studies.containment) out.push_back({"Containment", {report::containment_in_short(*studies.containment)}});
  if (studies.flotation) {
    out.push_back({"Ground water", {report::flotation_first, report::flotation_in_short(*studies.flotation)}});
  }
  if (studies.vapor) out.push_back({"Vapor", report::vapor_answer(*studies.vapor, display, glyphs)});
  for (const checks::FindingSet& set : studies.rule_sets) {
    if (!set.findings.empty()) out.push_back({set.title, {report::count_by_state(set.findings) + "."}});
  }
  if (studies.ledger) {
    std::vector<std::string> sentences;
    if (report::ledger_falls_short(*studies.ledger)) sentences.emplace_back(report::ledger_first);
    for (const studies::LedgerBook& book : studies.ledger->books) {
      const std::vector<std::string> told = report::book_answer(book, display, glyphs);
      if (!told.empty()) sentences.push_back(book.name + ": " + told.front());
    }
    out.emplace_back("Ledger", std::move(sentences));
  }
  for (const studies::IncidentResult& incident : studies.incidents) {
    std::vector<std::string> sentences = report::incident_answer(incident, display, glyphs);
    sentences.insert(sentences.begin(), std::string("If it has happened: ") + report::incident_first);
    out.emplace_back(report::incident_title(incident), std::move(sentences));
  }
  return out;
}

/// What is to be in the report; empty, with the reason on standard error, if a name is wrong.
std::optional<report::ReportChoice> report_choice(const FlowArguments& arguments, const site::Site& site) {
  report::ReportChoice out;
  for (const std::string& ids : arguments.sections) {
    std::vector<std::string> some = studies::read_ids(ids);
    out.sections.insert(out.sections.end(), some.begin(), some.end());
  }
  std::vector<Diagnostic> wrong = report::check_sections(out.sections, site);
  for (const std::string& cell : arguments.cells) {
    if (auto problem = report::fill_cell(cell, out.cells)) wrong.push_back(std::move(*problem));
  }
  tell_options(wrong);
  if (!wrong.empty()) return std::nullopt;
  return out;
}

/// Writes the data of every study into the folder; the paths are added to `written`. False if one could not be.
bool write_data(const std::string& folder, const report::StationStudies& studies, const SiteSource& source,
                std::vector<std::string>& written) {
  const auto write = [&](const std::string& name, const report::Json& json) {
    written.push_back((std::filesystem::path(folder) / name).string());
    return write_file(written.back(), report::to_text(json));
  };
  bool good = write("flow.json", report::flow_document(*studies.flow, source.texts, studies.findings));
  if (good && studies.containment) {
    good = write("containment.json", report::containment_document(*studies.containment, {{}, {}, source.texts, {}}));
  }
  if (good && studies.tank) {
    good = write("tank.json", report::tank_document(*studies.tank, checks::check_tanks(source.site, *studies.tank),
                                                    {{}, {}, source.texts, {}}));
  }
  if (good && studies.flotation) {
    good = write("flotation.json", report::flotation_document(*studies.flotation,
                                                              {{}, {}, source.texts, studies.flotation_findings, {}}));
  }
  if (good && studies.vapor) {
    good =
        write("vapor.json", report::vapor_document(*studies.vapor, {{}, {}, source.texts, studies.vapor_findings, {}}));
  }
  if (good && studies.line_test) {
    good = write("line-test.json",
                 report::line_test_document(
                     *studies.line_test, {{}, {}, source.texts, studies.line_test_findings, {}, source.site.display}));
  }
  if (good && studies.ledger) {
    good = write("ledger.json",
                 report::ledger_document(*studies.ledger, {{}, {}, source.texts, studies.ledger_findings, {}}));
  }
  if (good && studies.meter) {
    good = write("meter.json",
                 report::meter_document(*studies.meter,
                                        {{}, {}, source.texts, studies.meter_findings, {}, source.site.display}));
  }
  for (std::size_t i = 0; good && i < studies.incidents.size(); ++i) {
    const std::string name =
        "incident-" + std::to_string(i + 1) + "-" + studies::word(studies.incidents[i].options.kind);
    good = write(name + ".json", report::incident_document(studies.incidents[i], {{}, {}, source.texts, {}}));
  }
  return good;
}

/// Writes report.html, report.pdf if asked, and the data into the folder; the paths written, empty if one could not
/// be.
std::vector<std::string> write_report(const FlowArguments& arguments, const SiteSource& source,
                                      const report::StationStudies& studies, const std::string& html) {
  const std::string& folder = arguments.site.out;
  if (!make_folder(folder)) return {};
  std::vector<std::string> written{(std::filesystem::path(folder) / "report.html").string()};
  if (!write_file(written.front(), html) || !write_data(folder, studies, source, written)) return {};
  if (!arguments.pdf) return written;
  const std::string pages = (std::filesystem::path(folder) / "report.pdf").string();
  if (!write_pdf(pages, html, paper_of(arguments.paper, source.site.display))) return {};
  written.insert(written.begin() + 1, pages);
  return written;
}

/// The page of all studies, or of the flow study alone.
std::string page_of(const FlowArguments& arguments, const SiteSource& source, const report::StationStudies& studies,
                    const report::ReportChoice& choice, bool all) {
  if (!all) {
    return report::flow_report(*studies.flow, source.site,
                               {today(), arguments.command, source.texts, studies.findings});
  }
  return report::station_report(studies, source.site, {today(), arguments.command, source.texts}, choice);
}

report::StationStudies studies_of(const site::Site& site, const studies::FlowOptions& options, const site::Date& on,
                                  bool all) {
  if (all) return report::study_station(site, options, on);
  report::StationStudies out;
  out.flow = studies::study_flow(site, options);
  out.findings = checks::check_flow(site, *out.flow);
  return out;
}

void print_summary(const FlowArguments& arguments, const SiteSource& source, const report::StationStudies& studies,
                   const std::vector<std::string>& written) {
  const Console console = this_console();
  const report::TerminalStyle style{static_cast<std::size_t>(console.width), console.color, console.utf8,
                                    arguments.site.verbose};
  const report::Glyphs glyphs = console.utf8 ? report::Glyphs::unicode : report::Glyphs::ascii;
  print(
      report::flow_summary(*studies.flow, source.site, style,
                           {source.texts, written, studies.findings, in_short(studies, source.site.display, glyphs)}));
}

/// Ledger and meters of the records that are named, and the rule sets. False, with the reason on standard error, if
/// records cannot be read.
bool add_records_and_rules(const FlowArguments& arguments, const site::Date& on, SiteSource& source,
                           report::StationStudies& studies) {
  if (arguments.records.empty()) {
    report::add_rule_sets(source.site, on, nullptr, studies);
    return true;
  }
  const auto records = store::read_records(arguments.records, source.texts, &source.site);
  if (!records.ok()) {
    print_error(report::to_text(records.diagnostics, source.texts));
    return false;
  }
  checks::Studied of_records;
  checks::add_records(source.site, records.value, {}, of_records);
  studies.ledger = std::move(of_records.ledger);
  studies.meter = std::move(of_records.meter);
  studies.ledger->warnings.insert(studies.ledger->warnings.begin(), records.diagnostics.begin(),
                                  records.diagnostics.end());
  studies.ledger_findings = checks::check_ledger(*studies.ledger);
  if (studies.meter) studies.meter_findings = checks::check_meter(*studies.meter);
  report::add_rule_sets(source.site, on, &records.value, studies);
  return true;
}

/// The flow study, and the others where all are asked for.
Exit study(const FlowArguments& arguments, bool all) {
  SiteSource source;
  if (!load_site(arguments.site, source) || !has_hose(source)) return Exit::bad_input;
  const auto options = flow_options(arguments, source);
  const auto choice = report_choice(arguments, source.site);
  const std::optional<site::Date> on = day_of(arguments.on);
  if (!options || !choice || !on) return Exit::bad_input;
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  report::StationStudies studies = studies_of(source.site, *options, *on, all);
  if (all && !add_records_and_rules(arguments, *on, source, studies)) return Exit::bad_input;
  studies.flow->warnings.insert(studies.flow->warnings.begin(), source.warnings.begin(), source.warnings.end());
  std::vector<std::string> written;
  if (!arguments.site.out.empty()) {
    written = write_report(arguments, source, studies, page_of(arguments, source, studies, *choice, all));
    if (written.empty()) return Exit::bad_input;
  }
  if (arguments.site.json) {
    print(report::to_text(report::flow_document(*studies.flow, source.texts, studies.findings)));
  } else {
    print_summary(arguments, source, studies, written);
  }
  const std::vector<Diagnostic> errors = errors_of(studies.flow->warnings);
  if (!errors.empty()) {
    print_error(report::to_text(errors, source.texts));
    return Exit::bad_input;
  }
  const bool short_of_any = falls_short(studies.findings) || falls_short(studies.flotation_findings) ||
                            falls_short(studies.vapor_findings) || falls_short(studies.line_test_findings) ||
                            falls_short(studies.ledger_findings) || falls_short(studies.meter_findings) ||
                            std::any_of(studies.rule_sets.begin(), studies.rule_sets.end(),
                                        [](const auto& set) { return falls_short(set.findings); });
  return short_of_any ? Exit::falls_short : Exit::fine;
}

}  // namespace

Exit flow_command(const FlowArguments& arguments) { return study(arguments, false); }

Exit study_command(const FlowArguments& arguments) {
  FlowArguments all = arguments;
  if (all.site.out.empty() && !all.site.json) {
    all.site.out = (std::filesystem::path("out") / std::filesystem::path(all.site.path).stem()).string();
  }
  return study(all, true);
}

}  // namespace forecourse::cli
