// Prints a generated file of the tree: `generate schema` or `generate reference`. For tools/fresh.sh.
#include <cstdio>
#include <string_view>

#include "forecourse/site/schema.h"

int main(int argc, char** argv) {
  const std::string_view what = argc == 2 ? argv[1] : "";
  if (what == "schema") {
    std::fputs(forecourse::site::site_schema().c_str(), stdout);
  } else if (what == "reference") {
    std::fputs(forecourse::site::site_reference().c_str(), stdout);
  } else {
    std::fputs("usage: generate schema | reference\n", stderr);
    return 2;
  }
  return 0;
}
