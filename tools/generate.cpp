// Prints a generated file of the tree. For tools/fresh.sh.
#include <array>
#include <cstdio>
#include <string>
#include <string_view>

#include "forecourse/report/html/chart_style.h"
#include "forecourse/server/answers/web_types.h"
#include "forecourse/server/answers/web_units.h"
#include "forecourse/site/schema.h"
#include "forecourse/store/records/reference.h"

namespace {

std::string drawing_rules() {
  return "/* Made by tools/fresh.sh from the rules of the report's drawings; not to be changed here. */\n" +
         std::string(forecourse::report::html::chart_rules());
}

struct Generated {
  std::string_view what;
  std::string (*text)();
};

constexpr auto all = std::to_array<Generated>({{"schema", forecourse::site::site_schema},
                                               {"reference", forecourse::site::site_reference},
                                               {"records", forecourse::store::records_reference},
                                               {"types", forecourse::server::web_types},
                                               {"units", forecourse::server::web_units},
                                               {"drawing-rules", drawing_rules}});

}  // namespace

int main(int argc, char** argv) {
  const std::string_view what = argc == 2 ? argv[1] : "";
  for (const Generated& one : all) {
    if (one.what != what) continue;
    std::fputs(one.text().c_str(), stdout);
    return 0;
  }
  std::fputs("usage: generate schema | reference | records | types | units | drawing-rules\n", stderr);
  return 2;
}
