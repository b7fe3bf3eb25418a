#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <semaphore>
#include <string>

#include "forecourse/report/html/paper.h"
#include "forecourse/report/json_document.h"
#include "forecourse/server/http/reply.h"

namespace forecourse::server {

/// Reports of the open station. It keeps the studies of the last text, so that another choice of sections or another
/// text in a title cell is a matter of milliseconds. Any number of threads may ask at once.
class StationPages {
 public:
  /// True: nobody waits for the answer any more. Asked now and then while a PDF is made.
  using GivenUp = std::function<bool()>;

  StationPages();
  ~StationPages();
  StationPages(const StationPages&) = delete;
  StationPages& operator=(const StationPages&) = delete;

  /// What can be chosen: {"sections": [{id, name, has_content, why_not}], "cells": [{name, label, when_empty, text}],
  /// "pdf": {available, hint}}; 422 with {error, hint} where the text cannot be studied.
  [[nodiscard]] Reply sections(const std::string& text, const std::string& file);

  /// The report. PDF takes seconds, and at most two are made at once.
  ///
  /// \param asked {"sections": [id], "cells": {name: text}, "units": "us"|"si", "paper": "a4"|"letter",
  ///              "format": "html"|"paper"|"pdf"}; all may be missing. "paper" is the page as it goes to the PDF, for
  ///              a look before: black on white whatever the screen
  /// \return 400 where it asks for what is not there; 422 where the text cannot be studied; 429 where two PDFs are
  ///         being made; 503 where the program that sets pages is not installed; 500 where it fails
  [[nodiscard]] Reply report(const std::string& text, const std::string& file, const report::Json& asked,
                             const GivenUp& given_up = {});

 private:
  struct Studied;
  [[nodiscard]] std::shared_ptr<const Studied> studied(const std::string& text, const std::string& file);
  [[nodiscard]] Reply pdf(const std::string& html, report::html::Paper paper, const GivenUp& given_up);

  std::mutex mutex_;
  std::shared_ptr<const Studied> last_;
  std::counting_semaphore<2> pages_set_;
};

}  // namespace forecourse::server
