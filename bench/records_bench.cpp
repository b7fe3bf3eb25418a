// Ten years of a station with 20 tanks, from CSV. Goal: under 5 s.
#include <benchmark/benchmark.h>

#include <cstdlib>

#include "forecourse/store/read_records.h"
#include "records_text.h"

namespace forecourse {
namespace {

void ten_years_from_csv(benchmark::State& state) {
  const bench::RecordsText text = bench::records_text(10);
  for (auto _ : state) {
    Parsed<site::records::Records> records;
    std::vector<SourceText> texts;
    texts.push_back({"dips.csv", text.dips});
    store::read_records_text(*store::find_kind("dips"), texts, records);
    texts.push_back({"deliveries.csv", text.deliveries});
    store::read_records_text(*store::find_kind("deliveries"), texts, records);
    texts.push_back({"sales.csv", text.sales});
    store::read_records_text(*store::find_kind("sales"), texts, records);
    const std::size_t read = records.value.dips.size() + records.value.deliveries.size() + records.value.sales.size();
    if (!records.ok() || read != text.rows) std::abort();
  }
  state.counters["rows"] = static_cast<double>(text.rows);
}
BENCHMARK(ten_years_from_csv)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace forecourse
