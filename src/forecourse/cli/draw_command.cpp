#include <algorithm>
#include <filesystem>

#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/cli/output.h"
#include "forecourse/cli/pdf.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/draw/draw_report.h"

namespace forecourse::cli {
namespace {

bool write_files(const DrawArguments& arguments, const SiteSource& source, const handover::DrawingSet& set,
                 report::DrawFacts& facts) {
  if (!make_folder(arguments.site.out)) return false;
  const std::filesystem::path folder(arguments.site.out);
  const auto written = [&](const std::string& name, const std::string& text) {
    facts.written.push_back((folder / name).string());
    return write_file(facts.written.back(), text);
  };
  for (const handover::Drawing& drawing : set.drawings) {
    if (!written(drawing.id + ".svg", report::draw_svg(drawing)) ||
        !written(drawing.id + ".dxf", report::draw_dxf(drawing, source.site.display)))
      return false;
  }
  if (!written("draw.json", report::to_text(report::draw_document(set, facts)))) return false;
  if (!arguments.pdf) return true;
  facts.written.push_back((folder / "drawing.pdf").string());
  // The sheets bring the size of their paper with them.
  return write_pdf(facts.written.back(), report::draw_sheets(set), paper_of("", source.site.display));
}

}  // namespace

Exit draw_command(const DrawArguments& arguments) {
  if (arguments.pdf && arguments.site.out.empty()) {
    print_error("error: --pdf needs --out, the folder to write into\n");
    return Exit::bad_input;
  }
  SiteSource source;
  if (!load_site(arguments.site, source)) return Exit::bad_input;
  handover::DrawingOptions options = arguments.options;
  if (!day_of(options.date, "--date")) return Exit::bad_input;
  if (options.date.empty()) options.date = today();
  const std::vector<Diagnostic> wrong = handover::check_drawing_options(source.site, options);
  if (has_error(wrong)) {
    print_error(report::to_text(wrong, source.texts));
    return Exit::bad_input;
  }
  handover::DrawingSet set = handover::draw_station(source.site, options);
  set.version = FORECOURSE_VERSION;
  set.warnings.insert(set.warnings.begin(), source.warnings.begin(), source.warnings.end());
  report::DrawFacts facts{source.texts, {}};
  if (!arguments.site.out.empty() && !write_files(arguments, source, set, facts)) return Exit::bad_input;
  if (arguments.site.json) {
    print(report::to_text(report::draw_document(set, facts)));
  } else {
    const Console console = this_console();
    print(report::draw_summary(
        set, {static_cast<std::size_t>(console.width), console.color, console.utf8, arguments.site.verbose}, facts));
  }
  return Exit::fine;
}

}  // namespace forecourse::cli
