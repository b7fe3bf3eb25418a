#include <fmt/format.h>

#include "forecourse/site/text/read_run.h"
#include "forecourse/store/mapping/mapping.h"

namespace forecourse::store {
namespace {

class HeadingFinder {
 public:
  HeadingFinder(const Mapping& mapping, const std::vector<CsvCell>& header, SourceSpan row,
                std::vector<Diagnostic>& diagnostics)
      : mapping_(mapping), header_(header), row_(row), diagnostics_(diagnostics) {}

  std::optional<Layout> find() {
    Layout layout;
    layout.cells = header_.size();
    layout.form = mapping_.form;
    for (const MappedColumn& column : mapping_.columns) layout.sources.push_back(source_of(column));
    for (const auto& [heading, texts] : mapping_.leave_out) {
      if (const auto place = place_of(heading)) layout.left_out.push_back({*place, texts});
    }
    const std::optional<std::size_t> day = layout.sources[0].cell;
    const bool of_moment = day && day == layout.sources[1].cell;
    layout.sources[0].of_moment = of_moment;
    layout.sources[1].of_moment = of_moment;
    return good_ ? std::optional<Layout>(std::move(layout)) : std::nullopt;
  }

 private:
  ColumnSource source_of(const MappedColumn& column) {
    ColumnSource source;
    source.unit = column.unit;
    source.constant = column.constant;
    source.words = column.words;
    if (!column.heading.empty()) source.cell = place_of(column.heading);
    if (column.place) source.cell = column.place;
    if (column.place && *column.place >= header_.size()) {
      error(row_, fmt::format("the mapping takes column {}, but this row has {}", *column.place + 1, header_.size()),
            "");
    }
    return source;
  }

  std::optional<std::size_t> place_of(const site::Name& heading) {
    std::optional<std::size_t> place;
    for (std::size_t i = 0; i < header_.size(); ++i) {
      if (header_[i].text != heading.text) continue;
      if (place)
        error(header_[i].where, fmt::format("two columns are called '{}'", heading.text), "give its number, from 1");
      place = i;
    }
    if (place) return place;
    std::vector<std::string_view> known;
    for (const CsvCell& cell : header_) known.push_back(cell.text);
    error(heading.where, fmt::format("the file has no column '{}'", heading.text),
          site::offer(heading.text, known, "its columns are"));
    diagnostics_.back().related.push_back({Severity::note, "its header is here", row_, {}, {}});
    return std::nullopt;
  }

  void error(SourceSpan where, std::string message, std::string hint) {
    diagnostics_.push_back({Severity::error, std::move(message), where, std::move(hint), {}});
    good_ = false;
  }

  const Mapping& mapping_;
  const std::vector<CsvCell>& header_;
  SourceSpan row_;
  std::vector<Diagnostic>& diagnostics_;
  bool good_ = true;
};

}  // namespace

std::optional<Layout> mapped_layout(CsvReader& reader, const Mapping& mapping, std::vector<Diagnostic>& diagnostics) {
  reader.skip_lines(mapping.skip_lines);
  std::vector<CsvCell> header;
  CsvReader ahead = reader;  // a file without a header begins with its first row
  if (!(mapping.header ? reader : ahead).next(header)) {
    diagnostics.push_back({Severity::error, "the file has no rows", reader.row_span(), {}, {}});
    return std::nullopt;
  }
  return HeadingFinder(mapping, header, (mapping.header ? reader : ahead).row_span(), diagnostics).find();
}

}  // namespace forecourse::store
