// The ledger of a month (goal: 2 ms) and the view of ten years of twenty tanks (goal: 500 ms). Records are invented.
#include <benchmark/benchmark.h>

#include <string>

#include "forecourse/base/unit_text.h"
#include "forecourse/site/read.h"
#include "forecourse/studies/ledger/invented_month.h"
#include "forecourse/studies/ledger/ledger.h"

namespace {

using namespace forecourse;

site::Site station(int tanks) {
  std::string text = "format = 1\n[site]\nname = \"Bench\"\n";
  for (int i = 1; i <= tanks; ++i) {
    const std::string n = std::to_string(i);
    text += "[[product]]\nid = \"p" + n + "\"\nkind = \"gasoline-e10\"\ndensity = \"740 kg/m3\"\n[[tank]]\nid = \"T" +
            n + "\"\nproduct = \"p" + n +
            "\"\nshape = { kind = \"horizontal-cylinder\", inside_diameter = \"96 in\", length = \"32 ft\", heads = "
            "\"dished\", pitch = \"1 %\", low_end = \"fill\" }\n";
  }
  return site::read_site(text).value;
}

site::records::Records records(const site::Site& site, int days) {
  studies::InventedMonth month;
  month.first = studies::day_of({2016, 12, 1, {}});
  month.days = days;
  month.daily_sales = to_si(2600, "gal");
  month.scatter = {to_si(0.125, "in"), 0.002, 0.001};
  site::records::Records all;
  std::uint64_t run = 0;
  for (const site::Tank& tank : site.tanks) {
    const site::records::Records one = studies::invented_month(site, tank.id.text, month, 9, ++run);
    all.dips.insert(all.dips.end(), one.dips.begin(), one.dips.end());
    all.deliveries.insert(all.deliveries.end(), one.deliveries.begin(), one.deliveries.end());
    all.sales.insert(all.sales.end(), one.sales.begin(), one.sales.end());
  }
  return all;
}

void ledger(benchmark::State& state, int tanks, int days) {
  const site::Site site = station(tanks);
  const site::records::Records all = records(site, days);
  for (auto _ : state) benchmark::DoNotOptimize(studies::study_ledger(site, all, {}));
}

BENCHMARK_CAPTURE(ledger, a_month_of_a_tank, 1, 30)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(ledger, ten_years_of_twenty_tanks, 20, 3652)->Unit(benchmark::kMillisecond);

}  // namespace
