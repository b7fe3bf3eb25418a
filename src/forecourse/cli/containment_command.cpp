#include <filesystem>
#include <variant>

#include "forecourse/base/unit_text.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/report/containment/containment_report.h"

namespace forecourse::cli {
namespace {

/// A quantity of an option; false, with the reason on standard error, if it is none.
bool read_option(const char* option, const std::string& text, const QuantityKind& kind, double& value) {
  const auto read = read_quantity(text, kind);
  if (const auto* wrong = std::get_if<UnitTextError>(&read)) {
    print_error(std::string("error: ") + option + " " + wrong->message + "\n" +
                (wrong->hint.empty() ? "" : "  hint: " + wrong->hint + "\n"));
    return false;
  }
  value = std::get<double>(read);
  if (value > 0.0) return true;
  print_error(std::string("error: ") + option + " is above zero, but '" + text + "' is written\n");
  return false;
}

bool read_options(const ContainmentArguments& arguments, studies::ContainmentOptions& options) {
  bool good = true;
  for (const std::string& text : arguments.inflows) {
    good = read_option("--inflow", text, VolumeFlow::kind(), options.inflows.emplace_back()) && good;
  }
  if (arguments.dead_for.empty()) return good;
  return read_option("--sensor-dead-for", arguments.dead_for, Duration::kind(), options.sensor_dead_for.emplace()) &&
         good;
}

bool write_report(const ContainmentArguments& arguments, const SiteSource& source,
                  const studies::ContainmentResult& result, report::ContainmentFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const std::string page = (folder / "containment.html").string();
  const std::string data = (folder / "containment.json").string();
  facts.written = {page, data};
  return write_file(page, report::containment_report(result, source.site, facts)) &&
         write_file(data, report::to_text(report::containment_document(result, facts)));
}

}  // namespace

Exit containment_command(const ContainmentArguments& arguments) {
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  studies::ContainmentOptions options;
  if (!read_options(arguments, options)) return Exit::bad_input;
  studies::ContainmentResult result = studies::study_containment(source.site, options);
  result.warnings.insert(result.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::ContainmentFacts facts{today(), arguments.command, source.texts, {}};
  if (!arguments.site.out.empty() && !write_report(arguments, source, result, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::containment_document(result, facts)));
  } else {
    const Console console = this_console();
    print(report::containment_summary(
        result, source.site,
        {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return Exit::fine;
}

}  // namespace forecourse::cli
