#include "forecourse/cli/flow_request.h"

#include <string>

#include "forecourse/cli/console.h"
#include "forecourse/studies/flow/read_flow_options.h"

namespace forecourse::cli {

void tell_options(const std::vector<Diagnostic>& problems) {
  for (const Diagnostic& wrong : problems) {
    print_error("error: " + wrong.message + "\n" + (wrong.hint.empty() ? "" : "  hint: " + wrong.hint + "\n"));
  }
}

studies::OpenSet open_set(const std::string& text, const site::Site& site) {
  return studies::read_open_set(text, site);
}

bool read_keep(const std::string& text, std::optional<double>& keep) {
  const Parsed<std::optional<double>> read = studies::read_keep(text, studies::Asker::command);
  tell_options(read.diagnostics);
  if (read.value) keep = read.value;
  return read.ok();
}

std::optional<studies::FlowOptions> flow_options(const FlowArguments& arguments, const SiteSource& source) {
  Parsed<studies::FlowOptions> read = studies::read_flow_options({arguments.open, arguments.keep, arguments.order},
                                                                 source.site, studies::Asker::command);
  tell_options(read.diagnostics);
  const std::vector<Diagnostic> problems = studies::check_options(source.site, read.value);
  if (!problems.empty()) print_error(report::to_text(problems, source.texts));
  if (!read.ok() || !problems.empty()) return std::nullopt;
  return std::move(read.value);
}

}  // namespace forecourse::cli
