#include "forecourse/report/html/page.h"

#include <fmt/format.h>

#include "forecourse/report/html/style.h"
#include "forecourse/report/svg/text.h"

namespace forecourse::report::html {
namespace {

using svg::escape;

/// The drawing convention for earth: a thick line with slanting ticks.
constexpr const char* ground_line =
    "<svg class=\"ground\" aria-hidden=\"true\" focusable=\"false\"><defs><pattern id=\"earth\" width=\"9\" "
    "height=\"10\" patternUnits=\"userSpaceOnUse\"><path d=\"M8 2.5 L4.5 9\"/></pattern></defs>"
    "<rect class=\"top\" width=\"100%\" height=\"2.5\"/><rect y=\"2.5\" width=\"100%\" height=\"7.5\" "
    "fill=\"url(#earth)\"/></svg>\n";

std::string cells(const Page& page) {
  std::string out = "<dl class=\"cells\">\n";
  for (const auto& [name, text] : page.cells) {
    out += fmt::format("<div><dt>{}</dt><dd>{}</dd></div>\n", escape(name), text.empty() ? "not given" : escape(text));
  }
  return out + "</dl>\n";
}

}  // namespace

std::string page(const Page& page) {
  std::string out = "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n";
  out +=
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; "
      "base-uri 'none'; form-action 'none'\">\n";
  out += "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n";
  out += "<meta name=\"referrer\" content=\"no-referrer\">\n";
  out += "<title>" + escape(page.station) + ": " + escape(page.study) + "</title>\n<style>";
  out += style_sheet();
  out += "</style>\n</head>\n<body>\n<header>\n<h1>" + escape(page.station) + "</h1>\n<p>" + escape(page.study) +
         "</p>\n</header>\n";
  out += ground_line;
  out += "<main>\n" + cells(page) + "<p class=\"caution\" role=\"note\">" + escape(page.caution) + "</p>\n";
  return out + page.body + "</main>\n</body>\n</html>\n";
}

}  // namespace forecourse::report::html
