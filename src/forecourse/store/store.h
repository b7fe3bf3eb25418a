#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/store/records/column.h"
#include "forecourse/store/records/row.h"

namespace forecourse::store {

/// The store could not do what it was asked: disk full, locked by another program, damaged.
class StoreFailure : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

/// Where rows come from, kept with them.
struct RowSource {
  std::string name;  ///< of the file, or how they were entered
  std::string at;    ///< when, as the caller tells it
};

/// A row that is in the store.
struct StoredRow {
  Row row;
  std::string source;
  std::size_t line = 0;
};

/// What became of a row that was to be added.
enum class Added {
  added,
  there,       ///< a row of this key with the same values was there
  contradicts  ///< a row of this key with other values was there, and stays
};

/// One transaction. Rows are in the store for good when `commit` has returned, and not at all before; a transaction
/// that is dropped leaves the store as it was.
class Writing {
 public:
  virtual ~Writing() = default;
  /// \param line  of the row in its source
  /// \param there filled with the row of the same key, if there is one
  [[nodiscard]] virtual Added add(const Kind& kind, const Row& row, std::size_t line, StoredRow& there) = 0;
  virtual void commit() = 0;
};

/// What is there of one kind.
struct KindSummary {
  const Kind* kind = nullptr;
  std::size_t rows = 0;
  std::string first_day;
  std::string last_day;
};

/// Records of one station and results kept, wherever they are kept. Calls throw `StoreFailure`.
class Store {
 public:
  virtual ~Store() = default;

  [[nodiscard]] virtual std::unique_ptr<Writing> write(const RowSource& source) = 0;
  /// Takes the rows of the last import from a source of this name out again, for good.
  /// \return what they were, "dip of 2026-11-05"; empty: there is no such import
  [[nodiscard]] virtual std::vector<std::string> take_back(const std::string& source) = 0;
  /// Each row of a kind in the order of time, and within a moment in that in which they were added. Values hold what
  /// was typed; only quantities hold their number.
  virtual void each_row(const Kind& kind, const std::function<void(const Row&)>& visit) = 0;
  [[nodiscard]] virtual std::vector<KindSummary> summary() = 0;

  /// The result that was kept under a key (see `result_key`).
  [[nodiscard]] virtual std::optional<std::string> result(const std::string& key) = 0;
  virtual void keep_result(const std::string& key, std::string_view study, const std::string& result) = 0;
  /// Drops every result kept; of one study, or of all.
  virtual void drop_results(std::string_view study = {}) = 0;

  /// Writes a whole and checked copy to a path where nothing is yet.
  virtual void back_up(const std::string& path) = 0;
  /// What is wrong with the store itself; empty when all is well.
  [[nodiscard]] virtual std::vector<std::string> faults() = 0;
};

/// Whether a file that is not there is made.
enum class Opening { must_exist, may_create };

/// Opens a store of one file (SQLite) and brings it to the present version. A file that is none, or of a later version,
/// is told and left as it is. \return null with an error told
[[nodiscard]] Parsed<std::unique_ptr<Store>> open_store(const std::string& path, Opening opening);

/// True if a file is a database as a store of one file is.
[[nodiscard]] bool is_store_file(const std::string& path);

/// The key of a result: a hash of 128 bits over everything it follows from.
/// \source [fnv_hash, FNV-1a of 128 bits]
[[nodiscard]] std::string result_key(std::string_view version, std::string_view site_text, std::string_view options);

}  // namespace forecourse::store
