#pragma once

#include <string>
#include <utility>
#include <vector>

namespace forecourse::report::html {

/// A report as one file that asks nobody for anything: no script, no font, no picture from outside.
struct Page {
  std::string station;                                     ///< the page's heading
  std::string study;                                       ///< what it is about: "Flow at every hose"
  std::vector<std::pair<std::string, std::string>> cells;  ///< title cells, label and text; an empty text: "not given"
  std::string caution;                                     ///< one line above every number
  std::string body;                                        ///< HTML, made with parts.h
  std::vector<std::pair<std::string, std::string>> title = {};  ///< cells that people fill in, above the others
  std::vector<std::string> foot = {};                           ///< for the foot of each printed page, behind its cells
  std::vector<std::string> first = {};                          ///< above everything, in large type; may be empty
  std::string rules = {};                                       ///< CSS of this page alone
};

/// The whole page. Light and dark follow the reader's setting; on paper it is black on white, A4 or Letter.
[[nodiscard]] std::string page(const Page& page);

}  // namespace forecourse::report::html
