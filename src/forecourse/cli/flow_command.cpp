#include <algorithm>
#include <filesystem>
#include <system_error>

#include "forecourse/checks/flow_checks.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/flow_request.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/containment/containment_report.h"
#include "forecourse/report/containment/containment_view.h"
#include "forecourse/report/flow/flow_html.h"
#include "forecourse/report/flow/flow_json.h"
#include "forecourse/report/flow/flow_terminal.h"
#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/incident/incident_view.h"

namespace forecourse::cli {
namespace {

/// Tells of a station without hoses: there is no flow to compute.
bool has_hose(const SiteSource& source) {
  const auto& dispensers = source.site.dispensers;
  if (std::any_of(dispensers.begin(), dispensers.end(), [](const auto& d) { return !d.hoses.empty(); })) return true;
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

/// The other studies of a station, for one report of all.
struct OtherStudies {
  std::vector<studies::IncidentResult> incidents;
  std::optional<studies::ContainmentResult> containment;
};

bool has_sump(const site::Site& site) {
  return std::any_of(site.tanks.begin(), site.tanks.end(), [](const auto& t) { return t.sump.has_value(); }) ||
         std::any_of(site.dispensers.begin(), site.dispensers.end(), [](const auto& d) { return d.sump.has_value(); });
}

/// The incidents that the site file asks for, and containment where there is a sump.
OtherStudies other_studies(const site::Site& site, const site::Date& on) {
  OtherStudies out;
  if (has_sump(site)) out.containment = studies::study_containment(site, {});
  for (const site::IncidentRequest& request : site.incidents) {
    studies::IncidentOptions options;
    options.kind = studies::incident_kind(request.kind.text).value_or(studies::IncidentKind::struck);
    options.request = request;
    options.today = on;
    out.incidents.push_back(studies::study_incident(site, options));
  }
  return out;
}

std::string sections(const OtherStudies& others, const site::Site& site) {
  std::string out;
  if (others.containment) out += report::containment_section(*others.containment, site.display);
  for (std::size_t i = 0; i < others.incidents.size(); ++i)
    out += report::incident_section(others.incidents[i], site, i + 1);
  return out;
}

std::vector<std::pair<std::string, std::vector<std::string>>> in_short(const OtherStudies& others,
                                                                       site::Display display, report::Glyphs glyphs) {
  std::vector<std::pair<std::string, std::vector<std::string>>> out;
  if (others.containment) out.push_back({"Containment", {report::containment_in_short(*others.containment)}});
  for (const studies::IncidentResult& incident : others.incidents) {
    std::vector<std::string> sentences = report::incident_answer(incident, display, glyphs);
    sentences.insert(sentences.begin(), std::string("If it has happened: ") + report::incident_first);
    out.emplace_back(report::incident_title(incident), std::move(sentences));
  }
  return out;
}

/// A file of data for each of the other studies; the paths written, empty if one could not be.
bool write_others(const std::string& folder, const OtherStudies& others, const SiteSource& source,
                  std::vector<std::string>& written) {
  const auto write = [&](const std::string& name, const report::Json& json) {
    written.push_back((std::filesystem::path(folder) / name).string());
    return write_file(written.back(), report::to_text(json));
  };
  bool good = true;
  if (others.containment) {
    good = write("containment.json", report::containment_document(*others.containment, {{}, {}, source.texts, {}}));
  }
  for (std::size_t i = 0; good && i < others.incidents.size(); ++i) {
    const std::string name =
        "incident-" + std::to_string(i + 1) + "-" + studies::word(others.incidents[i].options.kind);
    good = write(name + ".json", report::incident_document(others.incidents[i], {{}, {}, source.texts, {}}));
  }
  return good;
}

/// Writes report.html and flow.json into the folder, and report.pdf if asked; the paths written, empty if one could
/// not be.
std::vector<std::string> write_report(const FlowArguments& arguments, const SiteSource& source,
                                      const studies::FlowResult& result, const std::vector<checks::Finding>& findings,
                                      const OtherStudies& others) {
  const std::string& folder = arguments.site.out;
  if (!make_folder(folder)) return {};
  const std::string page = (std::filesystem::path(folder) / "report.html").string();
  const std::string data = (std::filesystem::path(folder) / "flow.json").string();
  const report::FlowReportFacts facts{today(), arguments.command, source.texts, findings,
                                      sections(others, source.site)};
  const std::string html = report::flow_report(result, source.site, facts);
  if (!write_file(page, html) ||
      !write_file(data, report::to_text(report::flow_document(result, source.texts, findings)))) {
    return {};
  }
  std::vector<std::string> written{page, data};
  if (!write_others(folder, others, source, written)) return {};
  if (!arguments.pdf) return written;
  const std::string pages = (std::filesystem::path(folder) / "report.pdf").string();
  if (!write_pdf(pages, html, paper_of(arguments.paper, source.site.display))) return {};
  written.insert(written.begin() + 1, pages);
  return written;
}

/// The flow study, and the others where all are asked for.
Exit study(const FlowArguments& arguments, bool all) {
  SiteSource source;
  if (!load_site(arguments.site, source) || !has_hose(source)) return Exit::bad_input;
  const auto options = flow_options(arguments, source);
  if (!options) return Exit::bad_input;
  studies::FlowResult result = studies::study_flow(source.site, *options);
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  const std::vector<checks::Finding> findings = checks::check_flow(source.site, result);
  const std::optional<site::Date> on = day_of(arguments.on);
  if (!on) return Exit::bad_input;
  const OtherStudies others = all ? other_studies(source.site, *on) : OtherStudies{};
  std::vector<std::string> written;
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  if (!arguments.site.out.empty()) {
    written = write_report(arguments, source, result, findings, others);
    if (written.empty()) return Exit::bad_input;
  }
  if (arguments.site.json) {
    print(report::to_text(report::flow_document(result, source.texts, findings)));
  } else {
    const Console console = this_console();
    const report::TerminalStyle style{static_cast<std::size_t>(console.width), console.color, console.utf8,
                                      arguments.site.verbose};
    const report::Glyphs glyphs = console.utf8 ? report::Glyphs::unicode : report::Glyphs::ascii;
    print(report::flow_summary(result, source.site, style,
                               {source.texts, written, findings, in_short(others, source.site.display, glyphs)}));
  }
  const std::vector<Diagnostic> errors = errors_of(result.warnings);
  if (!errors.empty()) {
    print_error(report::to_text(errors, source.texts));
    return Exit::bad_input;
  }
  return falls_short(findings) ? Exit::falls_short : Exit::fine;
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
