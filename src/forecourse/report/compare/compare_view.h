#pragma once

#include <string>
#include <vector>

#include "forecourse/decide/compare/compare.h"
#include "forecourse/report/diagnostic_text.h"
#include "forecourse/report/units.h"

namespace forecourse::report {

/// What every writer of a comparison needs: its result put in words, the same on every sheet.

/// What stands around the result.
struct CompareFacts {
  std::string label_a;               ///< the file of A
  std::string label_b;               ///< the file of B, or how B comes from A
  std::string date;                  ///< "25 Nov 2026"; empty: no date
  std::string command_line;          ///< that makes the comparison again
  std::vector<SourceText> texts;     ///< of A and of B
  std::vector<std::string> written;  ///< files, as the user can open them
};

/// The measure a figure is shown in; none for a count.
[[nodiscard]] std::optional<Measure> measure_of(decide::Amount amount);

/// A name of a set of open hoses as short as the tables have it: "alone", "one each", "all open".
[[nodiscard]] std::string short_state(const std::string& state);

/// "flow of a hose", "velocity in a line"
[[nodiscard]] const char* words_of(decide::Topic topic);

/// A row as it is printed; the unit stands in `what`. The difference is that of the figures as shown, or says that it
/// is smaller than they show.
struct ShownRow {
  std::string what;  ///< "flow of a hose, all open, gpm"
  std::string of;    ///< "D1.a", or with the hoses meant
  std::string a;
  std::string b;
  std::string difference;
  std::string percent;
};

/// "+0.14", "-3.2"; what rounds to zero has no sign.
[[nodiscard]] std::string signed_number(double value, int decimals, Glyphs glyphs);
/// The figure of B less that of A, both as they are shown; of two that differ by less, that it is under what they show.
[[nodiscard]] std::string difference_as_shown(double a, double b, int decimals, bool differs, Glyphs glyphs);

[[nodiscard]] ShownRow shown_row(const decide::DifferenceRow& row, site::Display display, Glyphs glyphs);

/// From how many hoses open B is worth it, and what it does below. Sentences, one list for each piping.
[[nodiscard]] std::vector<std::string> worth_in_words(const decide::Worth& worth, site::Display display,
                                                      Glyphs glyphs = Glyphs::unicode);

/// That there is no answer for hoses that only one of them feeds, and why; how many hoses keep the flow asked for.
[[nodiscard]] std::vector<std::string> beside_worth_in_words(const decide::Comparison& comparison,
                                                             site::Display display, Glyphs glyphs = Glyphs::unicode);

/// What "worth it" means here, and how the sets of open hoses are known to be the worst.
[[nodiscard]] std::string worth_meaning(const decide::Comparison& comparison);

/// "limiters hold every open hose", "the same", or what the verdict is.
[[nodiscard]] std::string step_note(const decide::WorthStep& step);

/// What B does not change, item by item: "flow of a hose alone", "everything of diesel".
[[nodiscard]] std::vector<std::string> unchanged_in_words(const decide::Comparison& comparison);

/// Parts that one of them does not have: "only in A: line gap-2, hose D3.a"; empty when there are none.
[[nodiscard]] std::string only_in_words(const char* which, const std::vector<decide::OnePart>& parts);

/// "D1.a, flow-to-keep: falls short in A, meets in B"
[[nodiscard]] std::string in_words(const decide::FindingChange& change);

/// "with all open, P2 delivers nothing in A"
[[nodiscard]] std::string in_words(const decide::DeadHead& dead_head);

/// What is not determined in A or in B, each with its reason.
[[nodiscard]] std::vector<std::string> undetermined_in_words(const decide::Comparison& comparison);

/// What there is to say about the site files, with file and place; what is said of both alike stands once.
[[nodiscard]] std::vector<std::string> warnings_in_words(const decide::Comparison& comparison,
                                                         const std::vector<SourceText>& texts);

/// What must be read with any of its numbers.
[[nodiscard]] std::vector<std::string> compare_cautions();

/// What is counted as a joint.
[[nodiscard]] std::string joints_meaning();

}  // namespace forecourse::report
