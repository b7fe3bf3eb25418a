#include <cctype>

#include "forecourse/report/delivery/delivery_report.h"
#include "forecourse/report/incident/incident_report.h"
#include "forecourse/report/lesson/amounts.h"
#include "forecourse/report/lesson/lesson_report.h"

namespace forecourse::report {

std::vector<std::string> lesson_cautions() {
  return {std::string("If something escapes: ") + incident_first, stalled_caution,
          "Computed from what was entered. It teaches; a computed result is no test and no approval.",
          "The adopted edition of the code rules, and so do the equipment's listing and instructions.",
          "Certified testers do the tests, licensed trades the work. Never try a failure at a station."};
}

std::string stop_words(const lesson::Page& page) {
  if (page.stop == site::Stop::station) return "Across the course";
  std::string word = site::word(page.stop);
  word.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(word.front())));
  return std::to_string(static_cast<int>(page.stop)) + " " + word;
}

std::string value_words(const lesson::Number& number, site::Display display, Glyphs glyphs) {
  return number.value ? shown(number, display, glyphs) : "not determined: " + number.reason;
}

}  // namespace forecourse::report
