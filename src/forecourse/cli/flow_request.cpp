#include "forecourse/cli/flow_request.h"

#include <sstream>
#include <string>
#include <variant>

#include "forecourse/base/unit_text.h"
#include "forecourse/cli/console.h"
#include "forecourse/studies/flow/open_sets.h"

namespace forecourse::cli {
namespace {

/// Ids parted by commas, without the blanks around them.
std::vector<std::string> ids_of(const std::string& text) {
  std::vector<std::string> ids;
  std::istringstream words(text);
  for (std::string id; std::getline(words, id, ',');) {
    const std::size_t first = id.find_first_not_of(' ');
    const std::size_t last = id.find_last_not_of(' ');
    if (first != std::string::npos) ids.push_back(id.substr(first, last - first + 1));
  }
  return ids;
}

}  // namespace

studies::OpenSet open_set(const std::string& text, const site::Site& site) {
  if (text == "all") return studies::all_hoses(site);
  if (text == "each") return studies::one_hose_each(site);
  if (text.empty() || text == "none") return {"no hose open", {}};
  return {text, ids_of(text)};
}

bool read_keep(const std::string& text, std::optional<double>& keep) {
  if (text.empty()) return true;
  const auto read = read_quantity(text, VolumeFlow::kind());
  if (const auto* wrong = std::get_if<UnitTextError>(&read)) {
    print_error("error: --keep " + wrong->message + "\n" +
                (wrong->hint.empty() ? "" : "  hint: " + wrong->hint + "\n"));
    return false;
  }
  keep = std::get<double>(read);
  if (*keep > 0.0) return true;
  print_error("error: --keep must be above zero, but '" + text + "' is written\n");
  return false;
}

std::optional<studies::FlowOptions> flow_options(const FlowArguments& arguments, const SiteSource& source) {
  studies::FlowOptions options;
  for (const std::string& set : arguments.open) options.open_sets.push_back(open_set(set, source.site));
  options.order = ids_of(arguments.order.value_or(""));
  const bool order_read = !arguments.order || !options.order.empty();
  if (!order_read) {
    print_error("error: --order names no hose, but '" + *arguments.order + "' is written\n" +
                "  hint: name hoses in the order in which they open: --order D1.a,D3.a\n");
  }
  const bool keep_read = read_keep(arguments.keep, options.keep_flow);
  const std::vector<Diagnostic> problems = studies::check_options(source.site, options);
  if (!problems.empty()) print_error(report::to_text(problems, source.texts));
  if (!keep_read || !order_read || !problems.empty()) return std::nullopt;
  return options;
}

}  // namespace forecourse::cli
