#include "forecourse/store/import.h"

#include <fmt/format.h>

#include <algorithm>

#include "forecourse/store/records/seen_rows.h"

namespace forecourse::store {
namespace {

constexpr std::size_t most_told = 200;

/// The line of a place that comes behind the one asked before.
class LineCounter {
 public:
  explicit LineCounter(std::string_view text) : text_(text) {}
  std::size_t line_of(std::size_t offset) {
    for (; at_ < offset && at_ < text_.size(); ++at_) line_ += text_[at_] == '\n' ? 1 : 0;
    return line_;
  }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
  std::size_t line_ = 1;
};

class TextImporter {
 public:
  TextImporter(Writing& writing, const ImportOptions& options, std::vector<Diagnostic>& diagnostics)
      : writing_(writing), options_(options), diagnostics_(diagnostics) {}

  /// False when the text cannot be read at all.
  bool take(const SourceText& source, std::uint32_t index, ImportedText& out) {
    const std::vector<Diagnostic> unreadable = why_no_csv(source.text, index);
    diagnostics_.insert(diagnostics_.end(), unreadable.begin(), unreadable.end());
    if (!unreadable.empty()) return false;
    const Mapping* mapping = options_.mapping;
    const bool stated = mapping != nullptr && mapping->separator;
    CsvReader csv(source.text, index, stated ? *mapping->separator : likely_separator(source.text));
    std::optional<Layout> layout = mapping == nullptr ? own_layout(csv, *out.kind, index, diagnostics_)
                                                      : mapped_layout(csv, *mapping, diagnostics_);
    if (!layout) return false;
    RowReader reader(csv, *out.kind, std::move(*layout), options_.names, diagnostics_);
    LineCounter lines(source.text);
    Row row;
    for (auto took = reader.next(row); took != RowReader::Took::end; took = reader.next(row)) {
      if (took == RowReader::Took::row) add(row, lines.line_of(row.where.begin), out);
    }
    reader.finish();
    out.rejected += reader.count().rejected;
    out.left_out = reader.count().left_out;
    return true;
  }

 private:
  void add(const Row& row, std::size_t line, ImportedText& out) {
    switch (writing_.add(*out.kind, row, line, there_)) {
      case Added::added:
        ++out.added;
        return;
      case Added::there:
        ++out.there;
        return;
      case Added::contradicts:
        break;
    }
    if (out.rejected++ >= most_told) return;
    diagnostics_.push_back({Severity::error,
                            fmt::format("this {} contradicts one that is stored: {}", out.kind->noun,
                                        differences(*out.kind, row, there_.row)),
                            row.where,
                            fmt::format("that one came from {}, line {}; if both are right, enter their times",
                                        there_.source, there_.line),
                            {}});
  }

  Writing& writing_;
  const ImportOptions& options_;
  std::vector<Diagnostic>& diagnostics_;
  StoredRow there_;
};

}  // namespace

Parsed<Import> import_texts(Store& store, const std::vector<SourceText>& texts, std::span<const TextToImport> what,
                            const ImportOptions& options) {
  Parsed<Import> result;
  bool whole = true;
  std::size_t rejected = 0;
  std::string names;
  for (const TextToImport& one : what) names += (names.empty() ? "" : ", ") + texts[one.text].name;
  const std::unique_ptr<Writing> writing = store.write({names, options.at});
  for (const TextToImport& one : what) {
    ImportedText& out = result.value.texts.emplace_back();
    out.name = texts[one.text].name;
    out.kind = options.mapping == nullptr ? one.kind : options.mapping->kind;
    whole = TextImporter(*writing, options, result.diagnostics).take(texts[one.text], one.text, out) && whole;
    rejected += out.rejected;
  }
  if (!whole || options.dry_run || (rejected > 0 && !options.without_rejects)) return result;
  writing->commit();
  result.value.stored = true;
  return result;
}

}  // namespace forecourse::store
