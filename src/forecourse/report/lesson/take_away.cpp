#include "forecourse/report/lesson/take_away.h"

#include "forecourse/report/json_document.h"

namespace forecourse::report {
namespace {

/// As the content of a script element: nothing in it ends the element, or begins another or a comment.
std::string inside_script(std::string json) {
  for (std::size_t at = json.find('<'); at != std::string::npos; at = json.find('<', at + 1)) {
    json.replace(at, 1, "\\u003c");
  }
  return json;
}

std::string script(const std::string& type, const std::string& id, const std::string& content) {
  return "<script type=\"" + type + "\" id=\"" + id + "\">" + content + "</script>\n";
}

}  // namespace

std::string take_away_page(const std::string& page, const TakeAway& carried) {
  const std::size_t end = page.rfind("</body>");
  if (end == std::string::npos) return {};
  const Json station{{"name", carried.name},
                     {"site", carried.site},
                     {"lesson", text_or_null(carried.lesson)},
                     {"units", carried.display == site::Display::us ? "us" : "si"}};
  const std::string told = station.dump(-1, ' ', false, Json::error_handler_t::replace);
  return page.substr(0, end) + script("application/json", "station", inside_script(told)) +
         script("text/plain", "engine", carried.engine) + page.substr(end);
}

}  // namespace forecourse::report
