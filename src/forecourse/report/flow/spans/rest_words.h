#pragma once

#include <string>
#include <vector>

#include "forecourse/report/units.h"
#include "forecourse/studies/flow/flow.h"

namespace forecourse::report {

/// A line in one of the three ways in which it can stand before a hose opens.
struct RestRow {
  std::string state;      ///< "held", "decayed", "empty"
  std::string pressures;  ///< lowest to highest gauge pressure of its places, without unit; may be empty
  std::string times;      ///< [s] to first flow, of the quickest to the slowest hose; may be empty
  std::string reason;     ///< why a time is not determined, and what to enter; may be empty
};

/// The three ways, in that order; empty where nothing of the line is determined.
[[nodiscard]] std::vector<RestRow> rest_rows(const studies::LineAtRest& line, site::Display display,
                                             Glyphs glyphs = Glyphs::unicode);

/// What holds the line and at what pressure, or why nothing does; a sentence.
[[nodiscard]] std::string held_in_words(const studies::LineAtRest& line, site::Display display,
                                        Glyphs glyphs = Glyphs::unicode);

/// Where the pressures of the rows are, in a sentence.
[[nodiscard]] std::string rest_places();

/// How the leak detectors hold back the first flow, with what of them is not entered; empty where there is none.
[[nodiscard]] std::string detector_in_words(const studies::LineAtRest& line, site::Display display,
                                            Glyphs glyphs = Glyphs::unicode);

}  // namespace forecourse::report
