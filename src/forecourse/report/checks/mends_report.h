#pragma once

#include <string>
#include <vector>

#include "forecourse/decide/mend/mend.h"
#include "forecourse/report/findings.h"
#include "forecourse/report/json_document.h"

namespace forecourse::report {

/// What stands above every list of mends.
inline constexpr const char* mends_caution =
    "Each was found by changing one value alone and computing the station again. It advises: trades, certified testers "
    "and where asked a licensed engineer decide and do the work, and nothing is entered before it is so.";

/// One object for each mend, with what was tried and its effect on the other findings.
[[nodiscard]] Json mends_json(const std::vector<decide::Mend>& mends);

struct MendWords {
  site::Display display = site::Display::us;
  Glyphs glyphs = Glyphs::unicode;
  bool all = false;  ///< with what was tried, and every part of its own
};

/// Lines that stand beneath a group of findings of a set: what to change, what it does, where likewise.
[[nodiscard]] std::vector<std::string> mend_lines(const std::vector<decide::Mend>& mends, const checks::FindingSet& set,
                                                  const FindingGroup& group, const MendWords& words);

/// A table of all mends; empty without any.
[[nodiscard]] std::string mends_section(const std::vector<decide::Mend>& mends, site::Display display);

}  // namespace forecourse::report
