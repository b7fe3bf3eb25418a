#pragma once

#include <string>
#include <vector>

#include "forecourse/handover/drawings/drawings.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/json_document.h"
#include "forecourse/report/terminal/text.h"

namespace forecourse::report {

/// What a report on drawings tells besides them.
struct DrawFacts {
  std::vector<SourceText> texts;          ///< the site file
  std::vector<std::string> written = {};  ///< paths
};

/// Each drawing in a few lines: its scale, what is placed and what is not, classified areas.
[[nodiscard]] std::string draw_summary(const handover::DrawingSet& set, const terminal::Style& style,
                                       const DrawFacts& facts = {});

/// The whole geometry; lengths in m.
[[nodiscard]] Json draw_document(const handover::DrawingSet& set, const DrawFacts& facts = {});

/// A drawing as a file of its own, as large as its paper, with a group for each layer.
[[nodiscard]] std::string draw_svg(const handover::Drawing& drawing);

/// All drawings as a document to be set on paper, a sheet for each.
[[nodiscard]] std::string draw_sheets(const handover::DrawingSet& set);

/// A drawing for programs that draw: release 12 of the drawing exchange format in plain letters. Lengths in inches
/// with US units, else in millimeters; a block for each kind of part, put in once for each part with its path.
[[nodiscard]] std::string draw_dxf(const handover::Drawing& drawing, site::Display display);

}  // namespace forecourse::report
