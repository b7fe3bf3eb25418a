#include "forecourse/cli/site_source.h"

#include "forecourse/cli/console.h"
#include "forecourse/site/edit.h"
#include "forecourse/site/read.h"

namespace forecourse::cli {
namespace {

std::string trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t");
  return first == std::string::npos ? std::string() : text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

void tell(const std::string& typed, const Diagnostic& trouble) {  // about the option, so at no place of the file
  print_error("error: " + typed + ": " + trouble.message + "\n");
  if (!trouble.hint.empty()) print_error("  hint: " + trouble.hint + "\n");
}

/// Applies one `path=value` to the text.
bool apply(const char* option, const std::string& set, std::string& text) {
  const std::string typed = option + (" " + set);
  const std::size_t equals = set.find('=');
  if (equals == std::string::npos) {
    print_error("error: " + typed + " has no '='\n  hint: write " + option + " line.trunk.bore=\"3 in\"\n");
    return false;
  }
  Parsed<std::string> changed = site::set_everywhere(text, trimmed(set.substr(0, equals)), set.substr(equals + 1));
  for (const Diagnostic& trouble : changed.diagnostics) tell(typed, trouble);
  text = std::move(changed.value);
  return !has_error(changed.diagnostics);
}

}  // namespace

bool read_site_file(const std::string& path, std::string& text) {
  if (!read_file(path, text)) return false;
  constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";  // not a letter of the first line
  if (text.starts_with(byte_order_mark)) text.erase(0, byte_order_mark.size());
  return true;
}

bool apply_sets(const std::vector<std::string>& sets, std::string& text, const char* option) {
  bool good = true;
  for (const std::string& set : sets) good = apply(option, set, text) && good;
  return good;
}

bool load_site(const SiteArguments& arguments, SiteSource& source) {
  source.texts.assign(1, {arguments.path, {}});
  if (!read_site_file(arguments.path, source.texts.front().text)) return false;
  if (!apply_sets(arguments.sets, source.texts.front().text)) return false;
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
