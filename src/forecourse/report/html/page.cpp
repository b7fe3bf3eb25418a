#include "forecourse/report/html/page.h"

#include <fmt/format.h>

#include <cctype>
#include <string_view>

#include "forecourse/report/html/style.h"
#include "forecourse/report/svg/text.h"
#include "forecourse/report/utf8.h"

namespace forecourse::report::html {
namespace {

using svg::escape;

/// The drawing convention for earth: a thick line with slanting ticks.
constexpr const char* ground_line =
    "<svg class=\"ground\" aria-hidden=\"true\" focusable=\"false\"><defs><pattern id=\"earth\" width=\"9\" "
    "height=\"10\" patternUnits=\"userSpaceOnUse\"><path d=\"M8 2.5 L4.5 9\"/></pattern></defs>"
    "<rect class=\"top\" width=\"100%\" height=\"2.5\"/><rect y=\"2.5\" width=\"100%\" height=\"7.5\" "
    "fill=\"url(#earth)\"/></svg>\n";

/// A text as a string of CSS; whatever is no plain letter or digit is written by its number.
std::string css_string(std::string_view text) {
  std::string out = "\"";
  for (std::size_t at = 0; at < text.size();) {
    const Character c = character_at(text, at);
    const bool plain = c.value < 128U && (std::isalnum(static_cast<int>(c.value)) != 0);
    out += plain ? std::string(1, static_cast<char>(c.value))
                 : fmt::format("\\{:06x}", c.valid && !is_hidden(c.value) ? static_cast<unsigned>(c.value) : 0xFFFDU);
    at += c.length;
  }
  return out + "\"";
}

/// The running title of each printed page but the first, and what it was made with at its foot.
std::string running_title(const Page& page) {
  std::string foot;
  const auto add = [&](const std::string& text) { foot += (foot.empty() ? "" : "  \u00B7  ") + text; };
  for (const auto& [name, text] : page.cells) {
    if (name != "Station" && name != "Study" && name != "Units" && !text.empty()) add(text);
  }
  for (const std::string& text : page.foot) add(text);
  constexpr const char* font = "font:8pt \"B612\",\"Liberation Sans\",Arial,sans-serif;color:#222";
  return fmt::format(
      "@page{{@top-left{{content:{0};{2}}}@bottom-left{{content:{1};{2}}}}}"
      "@page:first{{@top-left{{content:\"\"}}}}",
      css_string(page.station + ", " + page.study), css_string(foot), font);
}

/// Escaped, with places to break behind the folders of a path.
std::string cell_text(const std::string& text) {
  if (text.empty()) return "not given";
  std::string out;
  for (const char c : escape(text)) out += c == '/' ? std::string("/<wbr>") : std::string(1, c);
  return out;
}

std::string cells(const std::vector<std::pair<std::string, std::string>>& all) {
  if (all.empty()) return {};
  std::string out = "<dl class=\"cells\">\n";
  for (const auto& [name, text] : all) {
    out += fmt::format("<div><dt>{}</dt><dd>{}</dd></div>\n", escape(name), cell_text(text));
  }
  return out + "</dl>\n";
}

std::string first_lines(const std::vector<std::string>& first) {
  if (first.empty()) return {};
  std::string out;
  for (const std::string& one : first) out += (out.empty() ? "" : "<br>") + escape(one);
  return "<p class=\"first\" role=\"note\">" + out + "</p>\n";
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
  out += page.rules;
  out += running_title(page);
  out += "</style>\n</head>\n<body>\n<header>\n" + first_lines(page.first) + "<h1>" + escape(page.station) +
         "</h1>\n<p>" + escape(page.study) + "</p>\n</header>\n";
  out += ground_line;
  out += "<main>\n" + cells(page.title) + cells(page.cells) + "<p class=\"caution\" role=\"note\">" +
         escape(page.caution) + "</p>\n";
  return out + page.body + "</main>\n</body>\n</html>\n";
}

}  // namespace forecourse::report::html
