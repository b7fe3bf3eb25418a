// Any bytes as a file of records, and as one read by a mapping: reading answers with rows and diagnostics, every place
// lies in the text, and what is written of the cells is read back as it was.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "forecourse/store/csv/csv_writer.h"
#include "forecourse/store/mapping/mapping.h"
#include "forecourse/store/read_records.h"

namespace {

using namespace forecourse;

void look_at(const std::vector<Diagnostic>& told, std::size_t size) {
  for (const Diagnostic& one : told) {
    if (one.where && (one.where->begin > one.where->end || one.where->end > size)) std::abort();
  }
}

void write_and_read_back(std::string_view text) {
  store::CsvReader reader(text, 0, ',');
  std::vector<store::CsvCell> row;
  while (reader.next(row)) {
    std::vector<std::string> cells{"first"};  // a row in which nothing stands is passed over
    for (const store::CsvCell& cell : row) cells.push_back(store::guarded(cell.text));
    std::string out;
    store::append_row(out, cells);
    store::CsvReader again(out, 0, ',');
    std::vector<store::CsvCell> back;
    if (!again.next(back) || back.size() != cells.size() || !again.diagnostics().empty()) std::abort();
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (store::without_guard(back[i + 1].text) != row[i].text) std::abort();
    }
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  write_and_read_back(bytes);
  look_at(store::read_mapping(bytes, 0).diagnostics, size);
  for (const store::Kind& kind : store::kinds()) {
    const std::vector<SourceText> texts{{"fuzz", std::string(bytes)}};
    Parsed<site::records::Records> records;
    store::read_records_text(kind, texts, records);
    look_at(records.diagnostics, size);
  }
  return 0;
}
