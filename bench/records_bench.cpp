// Ten years of a station with 20 tanks, from CSV. Goal: under 5 s.
#include <benchmark/benchmark.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include "forecourse/store/import.h"
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

/// Imports all of it into a store; the file is at `path`.
void fill_store(const std::string& path, const bench::RecordsText& text) {
  auto store = store::open_store(path, store::Opening::may_create);
  const std::vector<SourceText> texts{
      {"dips.csv", text.dips}, {"deliveries.csv", text.deliveries}, {"sales.csv", text.sales}};
  const std::array<store::TextToImport, 3> what{
      {{0, store::find_kind("dips")}, {1, store::find_kind("deliveries")}, {2, store::find_kind("sales")}}};
  if (!store.ok() || !store::import_texts(*store.value, texts, what, {}).value.stored) std::abort();
}

class StoreOfTenYears : public benchmark::Fixture {
 public:
  void SetUp(const benchmark::State&) override {
    if (!path_.empty()) return;
    path_ = (std::filesystem::temp_directory_path() / fmt::format("forecourse-bench-{}.db", ::getpid())).string();
    fill_store(path_, bench::records_text(10));
  }
  ~StoreOfTenYears() override {
    for (const char* end : {"", "-wal", "-shm"}) std::remove((path_ + end).c_str());
  }

 protected:
  std::string path_;
};

BENCHMARK_DEFINE_F(StoreOfTenYears, read)(benchmark::State& state) {
  for (auto _ : state) {
    std::vector<SourceText> texts;
    benchmark::DoNotOptimize(store::read_records(path_, texts));
  }
}
BENCHMARK_REGISTER_F(StoreOfTenYears, read)->Unit(benchmark::kMillisecond);

/// One more row a transaction: what entry by hand waits for.
BENCHMARK_DEFINE_F(StoreOfTenYears, enter_one_row)(benchmark::State& state) {
  auto store = store::open_store(path_, store::Opening::must_exist);
  const store::TextToImport what{0, store::find_kind("dips")};
  int n = 0;
  for (auto _ : state) {
    const std::vector<SourceText> texts{
        {"entered", fmt::format("day,tank,depth\n2040-01-01,N{}-{},70 in\n", state.thread_index(), n++)}};
    if (!store::import_texts(*store.value, texts, {&what, 1}, {}).ok()) std::abort();
  }
}
BENCHMARK_REGISTER_F(StoreOfTenYears, enter_one_row)->Unit(benchmark::kMillisecond);

void import_ten_years(benchmark::State& state) {
  const bench::RecordsText text = bench::records_text(10);
  const std::string path =
      (std::filesystem::temp_directory_path() / fmt::format("forecourse-in-{}.db", ::getpid())).string();
  for (auto _ : state) {
    for (const char* end : {"", "-wal", "-shm"}) std::remove((path + end).c_str());
    fill_store(path, text);
  }
  for (const char* end : {"", "-wal", "-shm"}) std::remove((path + end).c_str());
}
BENCHMARK(import_ten_years)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace forecourse
