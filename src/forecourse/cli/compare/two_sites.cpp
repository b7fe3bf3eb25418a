#include "forecourse/cli/compare/two_sites.h"

#include "forecourse/cli/console.h"
#include "forecourse/site/read.h"

namespace forecourse::cli {
namespace {

std::string with_sets(const std::string& name, const std::vector<std::string>& sets) {
  std::string out;
  for (const std::string& set : sets) out += (out.empty() ? " with " : ", ") + set;
  return name + out;
}

/// How A and B are told in a report.
std::string label_of_a(const CompareArguments& arguments) { return with_sets(arguments.site.path, arguments.both); }

std::string label_of_b(const CompareArguments& arguments) {
  if (arguments.other.empty()) {
    return arguments.site.sets.empty() ? label_of_a(arguments) : with_sets("A", arguments.site.sets);
  }
  std::vector<std::string> sets = arguments.both;
  sets.insert(sets.end(), arguments.site.sets.begin(), arguments.site.sets.end());
  return with_sets(arguments.other, sets);
}

/// The texts of A and of B, B's with what `--set` asks. False if one could not be had; all that is wrong is told.
bool load_texts(const CompareArguments& arguments, std::vector<report::SourceText>& texts) {
  texts = {{label_of_a(arguments), {}}, {label_of_b(arguments), {}}};
  bool good = read_site_file(arguments.site.path, texts[0].text);
  const bool has_other = !arguments.other.empty();
  if (has_other) good = read_site_file(arguments.other, texts[1].text) && good;
  if (!good) return false;
  good = apply_sets(arguments.both, texts[0].text, "--set-both");
  if (!has_other) {
    texts[1].text = texts[0].text;
  } else if (good) {  // else the same trouble may be told twice
    good = apply_sets(arguments.both, texts[1].text, "--set-both");
  }
  return apply_sets(arguments.site.sets, texts[1].text) && good;
}

void choose_units(const std::string& units, site::Site& site) {
  if (units == "us") site.display = site::Display::us;
  if (units == "si") site.display = site::Display::si;
}

}  // namespace

bool load_two_sites(const CompareArguments& arguments, TwoSites& sites) {
  if (!load_texts(arguments, sites.texts)) return false;
  Parsed<site::Site> a = site::read_site(sites.texts[0].text, 0);
  Parsed<site::Site> b = site::read_site(sites.texts[1].text, 1);
  sites.warnings = std::move(a.diagnostics);
  const bool own_text = !arguments.other.empty() || !has_error(sites.warnings);  // else the same trouble twice
  if (own_text) sites.warnings.insert(sites.warnings.end(), b.diagnostics.begin(), b.diagnostics.end());
  sites.a = std::move(a.value);
  sites.b = std::move(b.value);
  choose_units(arguments.site.units, sites.a);
  if (!has_error(sites.warnings)) return true;
  print_error(report::to_text(sites.warnings, sites.texts));
  return false;
}

}  // namespace forecourse::cli
