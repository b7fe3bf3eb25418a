#pragma once

#include <functional>
#include <string>

#include "forecourse/report/html/paper.h"
#include "forecourse/site/site.h"

namespace forecourse::server {

/// The paper of a word, "a4" or "letter"; an empty word: letter with US units, A4 with SI.
[[nodiscard]] report::html::Paper paper_of(const std::string& word, site::Display display);

/// What to install where the program that sets pages is not there; empty where it is.
[[nodiscard]] std::string pdf_hint();

/// What came of setting a report's pages.
struct PdfMade {
  std::string error;    ///< empty: the file is there
  std::string hint;     ///< what to do about it; may be empty
  bool absent = false;  ///< the program that sets pages is not installed
  [[nodiscard]] bool good() const { return error.empty(); }
};

/// Sets a report's pages with the program WeasyPrint and writes them to `file`, through files beside it. It takes
/// seconds.
///
/// \param given_up true: nobody waits for the pages any more, and the program is ended; asked now and then
[[nodiscard]] PdfMade write_pdf(const std::string& file, const std::string& report, report::html::Paper paper,
                                const std::function<bool()>& given_up = {});

/// The same into memory, in a folder of its own that is gone afterwards.
[[nodiscard]] PdfMade make_pdf(std::string& bytes, const std::string& report, report::html::Paper paper,
                               const std::function<bool()>& given_up);

}  // namespace forecourse::server
