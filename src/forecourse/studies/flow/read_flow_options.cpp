#include "forecourse/studies/flow/read_flow_options.h"

#include <sstream>
#include <variant>

#include "forecourse/studies/flow/open_sets.h"

namespace forecourse::studies {
namespace {

Diagnostic fault(std::string message, std::string hint = {}) {
  return {Severity::error, std::move(message), std::nullopt, std::move(hint), {}};
}

/// The order in which hoses open; an error where a text names none.
Parsed<std::vector<std::string>> read_order(const std::optional<std::string>& text, Asker asker) {
  if (!text) return {};
  std::vector<std::string> ids = read_ids(*text);
  if (!ids.empty()) return {std::move(ids), {}};
  const std::string name = option_name("order", asker);
  const std::string example = asker == Asker::command ? name + " D1.a,D3.a" : "[\"D1.a\", \"D3.a\"]";
  return {{},
          {fault(name + " names no hose, but '" + *text + "' is written",
                 "name hoses in the order in which they open: " + example)}};
}

}  // namespace

std::vector<std::string> read_ids(const std::string& text) {
  std::vector<std::string> ids;
  std::istringstream words(text);
  for (std::string id; std::getline(words, id, ',');) {
    const std::size_t first = id.find_first_not_of(' ');
    const std::size_t last = id.find_last_not_of(' ');
    if (first != std::string::npos) ids.push_back(id.substr(first, last - first + 1));
  }
  return ids;
}

OpenSet read_open_set(const std::string& text, const site::Site& site) {
  if (text == "all") return all_hoses(site);
  if (text == "each") return one_hose_each(site);
  if (text.empty() || text == "none") return {"no hose open", {}};
  return {text, read_ids(text)};
}

Parsed<std::optional<double>> read_keep(const std::string& text, Asker asker) {
  const Parsed<site::Maybe<VolumeFlow>> read = read_option<VolumeFlow>("keep", text, asker);
  if (!read.value) return {std::nullopt, read.diagnostics};
  const double keep = read.value->likely.si();
  if (keep > 0.0) return {keep, {}};
  return {std::nullopt, {fault(option_name("keep", asker) + " must be above zero, but '" + text + "' is written")}};
}

Parsed<FlowOptions> read_flow_options(const FlowTexts& texts, const site::Site& site, Asker asker) {
  Parsed<FlowOptions> out;
  for (const std::string& set : texts.open) out.value.open_sets.push_back(read_open_set(set, site));
  Parsed<std::vector<std::string>> order = read_order(texts.order, asker);
  Parsed<std::optional<double>> keep = read_keep(texts.keep, asker);
  out.value.order = std::move(order.value);
  out.value.keep_flow = keep.value;
  out.diagnostics = std::move(order.diagnostics);
  out.diagnostics.insert(out.diagnostics.end(), keep.diagnostics.begin(), keep.diagnostics.end());
  return out;
}

}  // namespace forecourse::studies
