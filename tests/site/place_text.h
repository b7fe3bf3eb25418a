#pragma once

#include <gmock/gmock.h>

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/site/read.h"

namespace forecourse::site {

/// "12:7" of an offset, columns in code points.
inline std::string place_text(std::string_view text, std::size_t offset) {
  std::size_t line = 1;
  std::size_t column = 1;
  for (std::size_t i = text.substr(0, 3) == "\xEF\xBB\xBF" ? 3 : 0; i < offset && i < text.size(); ++i) {
    if (text[i] == '\n') {
      ++line;
      column = 1;
    } else if ((static_cast<unsigned char>(text[i]) & 0xC0U) != 0x80U) {
      ++column;
    }
  }
  return std::to_string(line) + ":" + std::to_string(column);
}

/// "2:8: error: message | hint" of a diagnostic.
inline std::string told(std::string_view text, const Diagnostic& d) {
  const char* severity = d.severity == Severity::error ? "error" : d.severity == Severity::warning ? "warning" : "note";
  std::string line = d.where ? place_text(text, d.where->begin) + ": " : "";
  line += std::string(severity) + ": " + d.message;
  return d.hint.empty() ? line : line + " | " + d.hint;
}

/// All that is told of a site file, one line each; related places indented below.
inline std::vector<std::string> told_of(std::string_view text) {
  std::vector<std::string> lines;
  for (const Diagnostic& d : read_site(text).diagnostics) {
    lines.push_back(told(text, d));
    for (const Diagnostic& related : d.related) lines.push_back("  " + told(text, related));
  }
  return lines;
}

}  // namespace forecourse::site
