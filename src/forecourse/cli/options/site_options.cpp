#include "forecourse/cli/options/site_options.h"

namespace forecourse::cli {

void add_site_options(CLI::App& command, SiteArguments& site) {
  command.add_option("SITE", site.path, "site file (TOML)")->required();
  command.add_option("--set", site.sets, "change a value for this run: line.trunk.bore=\"3 in\"")->take_all();
  command.add_option("--units", site.units, "units of the results: us or si (default: the site's)")
      ->check(CLI::IsMember({"us", "si"}));
  command.add_flag("--json", site.json, "print one JSON document, values in SI");
  command.add_option("--out", site.out, "folder for the report and its data");
  command.add_flag("--verbose", site.verbose, "list every default and every place");
}

}  // namespace forecourse::cli
