#pragma once

#include "forecourse/store/records/layout.h"
#include "forecourse/store/records/site_names.h"

namespace forecourse::store {

/// What the rows of a file came to.
struct RowCount {
  std::size_t read = 0;
  std::size_t rejected = 0;
  std::size_t left_out = 0;  ///< as the mapping says
};

/// Reads the rows below a header into records of one kind; each cell that cannot be read is told with its place.
class RowReader {
 public:
  /// \param names of the station, to which tanks, hoses and products must belong; null: any will do
  RowReader(CsvReader& reader, const Kind& kind, Layout layout, const SiteNames* names,
            std::vector<Diagnostic>& diagnostics);

  enum class Took { end, row, reject };
  /// Reads one more row; of a reject, `row` holds what could be read.
  [[nodiscard]] Took next(Row& row);
  /// What is told once a file: rows beyond those listed, times at which clocks change.
  void finish();

  [[nodiscard]] const RowCount& count() const { return count_; }

 private:
  [[nodiscard]] bool is_left_out() const;
  [[nodiscard]] bool read_values(Row& row);
  [[nodiscard]] bool read_value(std::size_t column, Value& value);
  [[nodiscard]] bool is_whole(const Row& row);
  void look_at_clock(const Row& row);
  void reject(SourceSpan where, std::string message, std::string hint);

  CsvReader& reader_;
  const Kind& kind_;
  Layout layout_;
  const SiteNames* names_;
  std::vector<Diagnostic>& diagnostics_;
  std::vector<CsvCell> cells_;
  RowCount count_;
  std::size_t told_ = 0;
  std::size_t csv_faults_ = 0;  ///< of the reader, that were seen
  struct Changes {
    std::size_t count = 0;
    SourceSpan first{};
  };
  Changes skipped_;
  Changes doubled_;
};

}  // namespace forecourse::store
