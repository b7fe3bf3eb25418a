#pragma once

#include <span>
#include <string>
#include <vector>

#include "forecourse/base/source_text.h"
#include "forecourse/store/mapping/mapping.h"
#include "forecourse/store/records/row_reader.h"
#include "forecourse/store/store.h"

namespace forecourse::store {

/// A text to import, by its place in the list of texts.
struct TextToImport {
  std::uint32_t text = 0;
  const Kind* kind = nullptr;  ///< of our own form; not asked when there is a mapping
};

struct ImportOptions {
  const Mapping* mapping = nullptr;  ///< null: our own form
  const SiteNames* names = nullptr;  ///< to which tanks, hoses and products must belong; null: any will do
  bool dry_run = false;              ///< everything is tried, and nothing kept
  bool without_rejects = false;      ///< rows that are good are kept though others are not
  std::string at;                    ///< when, kept with the rows
};

/// What became of one text.
struct ImportedText {
  std::string name;
  const Kind* kind = nullptr;
  std::size_t added = 0;
  std::size_t there = 0;  ///< in the store already, with the same values
  std::size_t rejected = 0;
  std::size_t left_out = 0;  ///< as the mapping says
};

struct Import {
  std::vector<ImportedText> texts;
  bool stored = false;  ///< false: the store is as it was
};

/// Imports texts into a store, in one transaction: all or nothing.
///
/// A row that is there with the same values is counted and not added; one that is there with other values is a reject,
/// told with both. With a reject nothing is stored unless `without_rejects`; with a text that cannot be read at all,
/// never. When this returns with `stored`, the rows are on the disk.
[[nodiscard]] Parsed<Import> import_texts(Store& store, const std::vector<SourceText>& texts,
                                          std::span<const TextToImport> what, const ImportOptions& options);

}  // namespace forecourse::store
