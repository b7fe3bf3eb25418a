#include "forecourse/cli/site_source.h"

#include "forecourse/cli/console.h"
#include "forecourse/site/edit.h"
#include "forecourse/site/read.h"

namespace forecourse::cli {
namespace {

/// Applies one `path=value` to the text.
bool set_value(const std::string& set, SiteSource& source) {
  const std::size_t equals = set.find('=');
  if (equals == std::string::npos) {
    print_error("error: --set " + set + " has no '='\n  hint: write --set line.trunk.bore=\"3 in\"\n");
    return false;
  }
  report::SourceText& text = source.texts.front();
  Parsed<std::string> changed = site::set_value(text.text, set.substr(0, equals), set.substr(equals + 1));
  if (!changed.ok()) {
    for (const Diagnostic& trouble : changed.diagnostics) {  // about the option, so at no place of the file
      print_error("error: --set " + set + ": " + trouble.message + "\n");
      if (!trouble.hint.empty()) print_error("  hint: " + trouble.hint + "\n");
    }
    return false;
  }
  text.text = std::move(changed.value);
  return true;
}

}  // namespace

bool load_site(const SiteArguments& arguments, SiteSource& source) {
  source.texts.assign(1, {arguments.path, {}});
  if (!read_file(arguments.path, source.texts.front().text)) return false;
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";  // not a letter of the first line
  std::string& text = source.texts.front().text;
  if (text.starts_with(byte_order_mark)) text.erase(0, byte_order_mark.size());
  for (const std::string& set : arguments.sets) {
    if (!set_value(set, source)) return false;
  }
  Parsed<site::Site> read = site::read_site(source.texts.front().text);
  const bool good = read.ok();  // warnings stand in the report of the study
  if (!good) print_error(report::to_text(read.diagnostics, source.texts));
  source.site = std::move(read.value);
  source.warnings = std::move(read.diagnostics);
  if (arguments.units == "us") source.site.display = site::Display::us;
  if (arguments.units == "si") source.site.display = site::Display::si;
  return good;
}

}  // namespace forecourse::cli
