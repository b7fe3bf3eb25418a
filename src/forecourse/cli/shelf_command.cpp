#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "forecourse/base/unit_text.h"
#include "forecourse/cli/commands.h"
#include "forecourse/cli/console.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/terminal/page.h"
#include "forecourse/site/shelf.h"

namespace forecourse::cli {
namespace {

bool wanted(const std::string& asked, const std::string& kind) { return asked.empty() || asked == kind; }

std::vector<std::string> kinds() {
  std::vector<std::string> out{"pipe"};
  for (const site::ShelfPart& part : site::shelf().parts) {
    if (std::find(out.begin(), out.end(), part.kind) == out.end()) out.push_back(part.kind);
  }
  return out;
}

std::string loss_text(const site::ShelfPart& part) {
  if (part.loss.per_flow_squared) return show_quantity(part.figure, "psi/gpm^2");
  std::string text = fmt::format("K {:.3g}", part.figure);
  if (part.loss.bore) text += " at " + show_quantity(part.loss.bore->likely.si(), "in");
  return text;
}

/// The status and the source; a source that says the status itself says it once.
std::string standing(site::ShelfStatus status, const std::string& source) {
  const std::string word = site::word(status);
  return source.rfind(word, 0) == 0 ? source : word + ", " + source;
}

report::Json shelf_json(const std::string& kind) {
  report::Json out{{"pipes", report::Json::array()}, {"parts", report::Json::array()}};
  if (wanted(kind, "pipe")) {
    for (const site::ShelfPipe& pipe : site::shelf().pipes) {
      out["pipes"].push_back({{"id", pipe.id},
                              {"construction", pipe.construction},
                              {"nominal", pipe.nominal},
                              {"bore_m", pipe.bore},
                              {"roughness_m", pipe.roughness},
                              {"status", word(pipe.status)},
                              {"source", pipe.source}});
    }
  }
  for (const site::ShelfPart& part : site::shelf().parts) {
    if (!wanted(kind, part.kind)) continue;
    const char* key = part.loss.per_flow_squared ? "loss_pa_s2_per_m6" : "loss_k";
    out["parts"].push_back({{"id", part.id},
                            {"kind", part.kind},
                            {key, part.figure},
                            {"status", word(part.status)},
                            {"source", part.source}});
  }
  return out;
}

std::string shelf_page(const std::string& kind, const Console& console) {
  report::terminal::Page page({static_cast<std::size_t>(console.width), console.color, console.utf8, false});
  page.title("Shelf of generic parts");
  page.paragraph(
      "They serve computation only: a part is in a station when its site file lists it. What is illustrative "
      "is invented, so that a first computation can be made; enter the figures of the equipment.");
  if (wanted(kind, "pipe")) {
    page.heading("pipe: bore and roughness");
    for (const site::ShelfPipe& pipe : site::shelf().pipes) {
      page.item(fmt::format("{}: {}, {}; {}", pipe.id, show_quantity(pipe.bore, "in"),
                            show_quantity(pipe.roughness, "mm"), standing(pipe.status, pipe.source)));
    }
  }
  for (const std::string& one : kinds()) {
    if (one == "pipe" || !wanted(kind, one)) continue;
    page.heading(one + ": pressure loss");
    for (const site::ShelfPart& part : site::shelf().parts) {
      if (part.kind != one) continue;
      page.item(fmt::format("{}: {}; {}", part.id, loss_text(part), standing(part.status, part.source)));
    }
  }
  return page.text();
}

}  // namespace

Exit shelf_command(const std::string& kind, bool json) {
  const std::vector<std::string> known = kinds();
  if (!kind.empty() && std::find(known.begin(), known.end(), kind) == known.end()) {
    print_error("error: the shelf has no kind '" + kind + "'\n  hint: one of " +
                fmt::format("{}", fmt::join(known, ", ")) + "\n");
    return Exit::bad_input;
  }
  print(json ? report::to_text(shelf_json(kind)) : shelf_page(kind, this_console()));
  return Exit::fine;
}

}  // namespace forecourse::cli
