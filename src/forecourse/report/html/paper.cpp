#include "forecourse/report/html/paper.h"

#include "forecourse/report/html/chart_style.h"

namespace forecourse::report::html {

std::string on_paper(std::string_view report, Paper paper) {
  const std::string size = paper == Paper::a4 ? "@page{size:A4}" : "@page{size:letter}";
  const std::string rules = "<style>" + chart_rules_on_paper() + "</style>";
  std::string out;
  std::size_t done = 0;
  const std::size_t head = report.find("</style>");
  if (head != std::string_view::npos) {
    out += with_paper_tokens(report.substr(0, head)) + size;
    done = head;
  }
  for (std::size_t at = report.find("<svg ", done); at != std::string_view::npos; at = report.find("<svg ", done)) {
    const std::size_t end = report.find('>', at) + 1;
    out += std::string(report.substr(done, end - done)) + rules;
    done = end;
  }
  return out + std::string(report.substr(done));
}

}  // namespace forecourse::report::html
