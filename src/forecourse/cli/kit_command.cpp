#include <filesystem>

#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/cli/workbook.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/kit/kit_report.h"
#include "forecourse/site/has_parts.h"
#include "forecourse/studies/read_options.h"

namespace forecourse::cli {
namespace {

/// What is asked, in SI; empty, with the reason on standard error, where an option is none.
std::optional<handover::KitOptions> options_of(const KitArguments& arguments) {
  using studies::Asker;
  const auto waste = studies::read_option<Ratio>("waste", arguments.waste, Asker::command);
  const auto stick = studies::read_option<Length>("stick", arguments.stick, Asker::command);
  std::vector<Diagnostic> wrong = waste.diagnostics;
  wrong.insert(wrong.end(), stick.diagnostics.begin(), stick.diagnostics.end());
  const auto fault = [&](const char* message, const char* hint) {
    wrong.push_back({Severity::error, message, std::nullopt, hint, {}});
  };
  if (waste.value && (waste.value->likely.si() < 0.0 || waste.value->likely.si() > 1.0))
    fault("--waste is a share of the pipe that is laid, from 0 % to 100 %", "write --waste \"5 %\"");
  if (stick.value && stick.value->likely.si() <= 0.0)
    fault("--stick is the length in which pipe comes, more than nothing", "write --stick \"20 ft\"");
  if (has_error(wrong)) {
    print_error(report::to_text(wrong, {}));
    return std::nullopt;
  }
  handover::KitOptions out;
  if (waste.value) out.waste = waste.value->likely.si();
  if (stick.value) out.stick_length = stick.value->likely.si();
  return out;
}

/// The pressures without flow, and nothing else of the flow study.
std::optional<studies::FlowResult> pressures_of(const site::Site& site) {
  if (!site::has_hose(site)) return std::nullopt;
  studies::FlowOptions options;
  options.spans = false;
  options.ladders = false;
  return studies::study_flow(site, options);
}

bool write_report(const KitArguments& arguments, const SiteSource& source, const handover::Kit& kit,
                  report::ReportFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const auto in_folder = [&](const char* name) {
    facts.written.push_back((std::filesystem::path(arguments.site.out) / name).string());
    return facts.written.back();
  };
  const std::string html = report::kit_report(kit, source.site, facts);
  const std::vector<report::CellTable> tables = report::kit_tables(kit, source.site.display);
  if (!write_file(in_folder("kit.html"), html)) return false;
  if (!write_file(in_folder("kit.json"), report::to_text(report::kit_document(kit, facts)))) return false;
  if (!write_file(in_folder("kit.csv"), report::to_csv(tables.front()))) return false;
  if (!write_workbook(in_folder("kit.xlsx"), tables)) return false;
  if (!arguments.pdf) return true;
  return write_pdf(in_folder("kit.pdf"), html, paper_of(arguments.paper, source.site.display));
}

}  // namespace

Exit kit_command(const KitArguments& arguments) {
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  const auto options = options_of(arguments);
  if (!options) return Exit::bad_input;
  const std::optional<studies::FlowResult> flow = pressures_of(source.site);
  handover::Kit kit = handover::make_kit(source.site, *options, flow ? &*flow : nullptr);
  kit.version = FORECOURSE_VERSION;
  kit.warnings.insert(kit.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::ReportFacts facts{today(), arguments.command, source.texts};
  facts.display = source.site.display;
  if (!arguments.site.out.empty() && !write_report(arguments, source, kit, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::kit_document(kit, facts)));
    return Exit::fine;
  }
  const Console console = this_console();
  print(report::kit_summary(
      kit, source.site, {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose},
      facts));
  return Exit::fine;
}

}  // namespace forecourse::cli
