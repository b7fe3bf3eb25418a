#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/handover/drawings/drawing.h"
#include "forecourse/handover/drawings/drawings.h"
#include "forecourse/handover/drawings/pen.h"

namespace forecourse::handover {

struct Paper {
  std::string_view id;
  double width = 0.0;   ///< [m], lying
  double height = 0.0;  ///< [m]
};

struct Scale {
  double denominator = 0.0;
  std::string words;
};

/// The paper of a word; an empty word: tabloid with US units, A3 with SI. Null: there is none of that name.
[[nodiscard]] const Paper* paper_called(std::string_view word, site::Display display);

/// "1:100" or "1 in = 10 ft"; empty: neither.
[[nodiscard]] std::optional<Scale> read_scale(std::string_view text);

/// The scales that drawings of a station are made at, largest first; those of a detail begin larger.
[[nodiscard]] std::vector<Scale> standard_scales(site::Display display, bool detail);

/// Puts a box of the station on a sheet: at the scale asked for, else at the largest standard one that fits.
/// \return false: it does not fit at that scale, or at any
[[nodiscard]] bool lay_on_sheet(Drawing& drawing, const Box& box, const Paper& paper, const std::optional<Scale>& asked,
                                site::Display display);

/// Frame, key, lists, notes and title cells beside the station, all on the layers "sheet" and "notes".
void finish_sheet(Drawing& drawing, const site::Site& site, const DrawingOptions& options);

}  // namespace forecourse::handover
