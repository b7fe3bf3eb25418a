#pragma once

#include <string>
#include <vector>

#include "forecourse/report/json_document.h"
#include "forecourse/report/svg/text.h"
#include "forecourse/server/answers/wants/want_reader.h"

namespace forecourse::server {

/// What is to be drawn.
struct DrawingWant {
  std::string drawing;
  std::string prefix;  ///< with which every id in it begins
  std::string product;
  std::string hose;
  double width = report::svg::wide;
};

/// A drawing, the sentences that go with it, and what to do where there is none.
struct Drawn {
  std::string svg;
  std::vector<std::string> remarks;
  std::string instead = "enter what the drawing needs";
};

/// The members that every want of a drawing has.
[[nodiscard]] DrawingWant read_drawing(WantReader& want);

/// The answer; one that says what to do where there is nothing to draw.
[[nodiscard]] report::Json drawn_json(const DrawingWant& want, Drawn drawn);

}  // namespace forecourse::server
