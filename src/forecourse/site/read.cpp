#include "forecourse/site/read.h"

#include <fmt/format.h>

#include <algorithm>

#include "forecourse/site/check_site.h"
#include "forecourse/site/text/document.h"
#include "forecourse/site/text/table_reader.h"

namespace forecourse::site {

namespace {

bool stands_before(const Diagnostic& a, const Diagnostic& b) {
  const auto begin = [](const Diagnostic& d) { return d.where ? d.where->begin : 0U; };
  return begin(a) < begin(b);
}

constexpr std::size_t most_told = 200;  // of errors, and of warnings

/// Cuts a list that nobody would read to its end.
void cut(std::vector<Diagnostic>& diagnostics) {
  std::size_t errors = 0;
  std::size_t warnings = 0;
  std::size_t left_out = 0;
  SourceSpan first_left_out{};
  std::erase_if(diagnostics, [&](const Diagnostic& d) {
    std::size_t& count = d.severity == Severity::error ? errors : warnings;
    if (++count <= most_told) return false;
    if (left_out++ == 0) first_left_out = d.where.value_or(SourceSpan{});
    return true;
  });
  if (left_out == 0) return;
  diagnostics.push_back({Severity::note,
                         fmt::format("{} more from here on are not listed", left_out),
                         first_left_out,
                         "put these right first",
                         {}});
}

void fill(Site& site, const Node& root, const ReadRun& run) {
  TableReader reader(root, run);
  fields(reader, site);
  reader.finish();
}

}  // namespace

Parsed<Site> read_site(std::string_view text, std::uint32_t text_index) {
  Parsed<Document> document = read_document(text, text_index);
  Parsed<Site> result;
  result.diagnostics = std::move(document.diagnostics);
  result.value.where = {text_index, 0, static_cast<std::uint32_t>(std::min<std::size_t>(text.size(), UINT32_MAX))};
  std::vector<SourceSpan> half_read = std::move(document.value.half_read);
  const ReadRun run{text, result.diagnostics, half_read, result.value.uncertain, document.value.complete};
  fill(result.value, document.value.root, run);
  if (!document.value.ids_lost) {
    for (Diagnostic& d : check_site(result.value, half_read)) result.diagnostics.push_back(std::move(d));
  }
  std::stable_sort(result.diagnostics.begin(), result.diagnostics.end(), stands_before);
  cut(result.diagnostics);
  return result;
}

}  // namespace forecourse::site
