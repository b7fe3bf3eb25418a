#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "forecourse/report/compare/compare_view.h"
#include "forecourse/report/compare/incident/incident_compare_view.h"

namespace forecourse::report {
namespace {

using decide::Beside;
using decide::IncidentAmount;
using decide::IncidentComparison;

constexpr std::size_t longest_list = 4;  // of cases in a sentence

std::string capital(std::string words) {
  if (!words.empty()) words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
  return words;
}

/// "+0.14 gal", "-3.2 %", "0.00 gal"
std::string signed_text(double value, const std::string& size, Glyphs glyphs) {
  if (size.find_first_of("123456789") == std::string::npos) return size;
  return (value > 0.0 ? "+" : glyphs == Glyphs::unicode ? "\u2212" : "-") + size;
}

bool is_range(const studies::Spread& spread) { return !same_amount(IncidentAmount::volume, {spread.low, spread.high}); }

std::string unsigned_text(const std::string& figure) {
  const std::size_t digits = figure.find_first_of("0123456789");
  return digits == std::string::npos ? figure : figure.substr(digits);
}

/// Cases by which way B goes, those that differ most first.
struct CasesCounted {
  std::size_t both = 0;
  std::size_t only_a = 0;
  std::size_t only_b = 0;
  std::vector<const decide::CaseRow*> less;
  std::vector<const decide::CaseRow*> more;
};

CasesCounted count_cases(const std::vector<decide::CaseRow>& cases) {
  CasesCounted out;
  for (const decide::CaseRow& row : cases) {
    const Beside& escaped = row.escaped;
    if (!escaped.difference()) {
      if (escaped.a) ++out.only_a;
      if (escaped.b) ++out.only_b;
      continue;
    }
    ++out.both;
    if (!same_amount(IncidentAmount::volume, escaped)) (*escaped.b < *escaped.a ? out.less : out.more).push_back(&row);
  }
  for (auto* rows : {&out.less, &out.more}) {
    std::stable_sort(rows->begin(), rows->end(), [](const auto* x, const auto* y) {
      return std::abs(*x->escaped.difference()) > std::abs(*y->escaped.difference());
    });
  }
  return out;
}

class Answer {
 public:
  Answer(const IncidentComparison& c, site::Display display, Glyphs glyphs)
      : c_(c), display_(display), glyphs_(glyphs) {}

  std::vector<std::string> tell() {
    if (!c_.is_determined()) {
      tell_problem("A", c_.a);
      tell_problem("B", c_.b);
      return std::move(out_);
    }
    tell_first();
    tell_status("A", c_.a.runs.front());
    tell_status("B", c_.b.runs.front());
    if (c_.a.at != c_.b.at) out_.push_back("It happens at " + c_.a.at + " in A and at " + c_.b.at + " in B.");
    tell_ranges();
    tell_cases();
    tell_paired();
    tell_mind();
    return std::move(out_);
  }

 private:
  [[nodiscard]] std::string volume(double si) const { return with_unit(Measure::volume, display_, si, glyphs_); }
  [[nodiscard]] std::string change(double si) const {  // "+0.14 gal"
    return signed_text(si, volume(std::abs(si)), glyphs_);
  }
  [[nodiscard]] std::string percent(double share, int places = 1) const {
    return number(100.0 * share, places, glyphs_) + (glyphs_ == Glyphs::unicode ? "\u00A0%" : " %");
  }

  void tell_problem(const char* which, const studies::IncidentResult& result) {
    if (!result.problem.empty()) {
      out_.push_back(std::string("Not determined in ") + which + ": " + result.problem + ".");
    } else if (result.runs.empty()) {
      out_.push_back(std::string("Not determined in ") + which + ".");
    }
  }

  void tell_status(const char* which, const studies::IncidentRun& run) {
    if (run.status == studies::RunStatus::finished) return;
    out_.push_back(std::string("In ") + which + " the run did not come to its end: " + run.reason +
                   "; its figures are those up to there.");
  }

  /// The case of the first runs, in words.
  [[nodiscard]] std::string first_case() const {
    const std::string& a = c_.a.runs.front().name;
    const std::string& b = c_.b.runs.front().name;
    return a == b ? capital(a) : "A: " + a + "; B: " + b;
  }

  [[nodiscard]] std::string with_shown_unit(const std::string& figure) const {
    return figure + (glyphs_ == Glyphs::unicode ? "\u00A0" : " ") + unit_label(Measure::volume, display_, glyphs_);
  }

  /// The least volume that is shown: "0.01 gal".
  [[nodiscard]] std::string least() const {
    const int places = decimals(Measure::volume, display_);
    return with_shown_unit(number(std::pow(10.0, -places), places, glyphs_));
  }

  /// "12.45 gal less escapes in B: 0.91 gal instead of 13.36 gal (-93.2 %)"
  [[nodiscard]] std::string held_against(const Beside& value, const char* what) const {
    const double d = *value.difference();
    constexpr double most_times = 10.0;  // of A; beyond, a percentage says nothing
    const bool has_share = *value.a > 0.0 && *value.b <= most_times * *value.a;
    const std::string share =
        has_share ? " (" + signed_text(d, percent(std::abs(d) / *value.a), glyphs_) + ")" : std::string();
    const std::string more = std::string(d < 0.0 ? " less " : " more ") + what + " in B";
    const ShownBeside shown = shown_beside(IncidentAmount::volume, value, true, display_, glyphs_);
    if (shown.a == shown.b) return "under " + least() + more + ", of " + shown.a + share;
    return with_shown_unit(unsigned_text(shown.difference)) + more + ": " + shown.b + " instead of " + shown.a + share;
  }

  /// B less A as the table has it: "-12.45 gal".
  [[nodiscard]] std::string apart(const Beside& value) const {
    return with_shown_unit(shown_beside(IncidentAmount::volume, value, true, display_, glyphs_).difference);
  }

  void tell_first() {
    const Beside escaped{c_.a.runs.front().escaped, c_.b.runs.front().escaped};
    const Beside outside{c_.a.runs.front().to_environment, c_.b.runs.front().to_environment};
    const bool same_escaped = same_amount(IncidentAmount::volume, escaped);
    const bool same_outside = same_amount(IncidentAmount::volume, outside);
    if (c_.same_in_all()) {
      out_.emplace_back(
          "B buys nothing: amounts, flows, times and barriers are the same in A and in B, in every case worked out.");
    } else if (c_.same_escape()) {
      out_.emplace_back(
          "B buys nothing in what escapes: it is as much in A and in B, in every case worked out. What differs is in "
          "the amounts, flows, times or barriers below.");
    } else if (same_escaped && same_outside) {
      out_.emplace_back("B buys nothing in the first case, and changes others.");
    }
    if (same_escaped && same_outside) {
      out_.push_back(first_case() + ": " + volume(*escaped.a) + " escapes in A and in B, " + volume(*outside.a) +
                     " of it outside the containment.");
      return;
    }
    out_.push_back(
        first_case() + ": " +
        (same_escaped ? "as much escapes in A and in B, " + volume(*escaped.a) : held_against(escaped, "escapes")) +
        ".");
    out_.push_back(
        "Outside the containment: " +
        (same_outside ? "as much in A and in B, " + volume(*outside.a) : held_against(outside, "ends up there")) + ".");
  }

  void tell_ranges() {
    if (!is_range(c_.a.escaped) && !is_range(c_.b.escaped) && !is_range(c_.a.to_environment) &&
        !is_range(c_.b.to_environment)) {
      return;
    }
    out_.push_back("Range over barriers that are not assured and inputs that are not certain: " +
                   shown(c_.a.escaped, Measure::volume, display_, glyphs_) + " escapes in A, " +
                   shown(c_.b.escaped, Measure::volume, display_, glyphs_) + " in B; outside " +
                   shown(c_.a.to_environment, Measure::volume, display_, glyphs_) + " in A, " +
                   shown(c_.b.to_environment, Measure::volume, display_, glyphs_) + " in B.");
  }

  /// In how many cases B loses less and where the most, and in which it loses more.
  void tell_cases() {
    if (c_.cases.size() < 2 || c_.same_escape()) return;
    const CasesCounted n = count_cases(c_.cases);
    std::string text = "Of " + std::to_string(n.both) + (n.both == 1 ? " case" : " cases") +
                       " that both have, less escapes in B in " + std::to_string(n.less.size());
    if (!n.less.empty()) text += " (most in: " + n.less.front()->name + ", " + apart(n.less.front()->escaped) + ")";
    text += ", more in " + std::to_string(n.more.size());
    for (std::size_t i = 0; i < std::min(n.more.size(), longest_list); ++i) {
      text += (i == 0 ? ": " : "; ") + n.more[i]->name + " (" + apart(n.more[i]->escaped) + ")";
    }
    if (n.more.size() > longest_list) text += "; and " + std::to_string(n.more.size() - longest_list) + " others";
    if (n.only_a > 0) text += "; " + std::to_string(n.only_a) + " only in A";
    if (n.only_b > 0) text += "; " + std::to_string(n.only_b) + " only in B";
    out_.push_back(text + ".");
  }

  /// Where the difference lies: "-70.00 gal at the median, ...".
  [[nodiscard]] std::string spread_of(const std::array<double, 3>& quantiles) const {
    const bool none = std::all_of(quantiles.begin(), quantiles.end(),
                                  [&](double q) { return change(q).find_first_of("123456789") == std::string::npos; });
    if (none) return "under " + least() + " either way from " + percent(0.05, 0) + " to " + percent(0.95, 0);
    return change(quantiles[1]) + " at the median, " + change(quantiles[0]) + " at " + percent(0.05, 0) + " and " +
           change(quantiles[2]) + " at " + percent(0.95, 0);
  }

  void tell_paired() {
    if (c_.options.runs == 0) return;
    if (!c_.paired) {
      const bool drawn = c_.a.spread && c_.b.spread;
      out_.push_back(std::string("How the difference is spread is not determined: ") +
                     (drawn ? "no pair of runs came to its end." : "this kind is not drawn run by run."));
      return;
    }
    const decide::PairedSpread& p = *c_.paired;
    out_.push_back("In " + std::to_string(p.counted) + " pairs of runs with the same draws, B less A is " +
                   spread_of(p.escaped) + "; less escapes in B in " + percent(p.less) + " of them, as much in " +
                   percent(p.same) + ", more in " + percent(p.more) + ".");
  }

  void tell_mind() {
    if (c_.a.first_line == c_.b.first_line) {
      if (!c_.a.first_line.empty()) out_.push_back("Mind: " + c_.a.first_line + ".");
      return;
    }
    if (!c_.a.first_line.empty()) out_.push_back("Mind, in A: " + c_.a.first_line + ".");
    if (!c_.b.first_line.empty()) out_.push_back("Mind, in B: " + c_.b.first_line + ".");
  }

  const IncidentComparison& c_;
  site::Display display_;
  Glyphs glyphs_;
  std::vector<std::string> out_;
};

}  // namespace

std::string incident_compare_title(const IncidentComparison& comparison) {
  studies::IncidentResult place = comparison.a;
  if (place.at.empty()) place.at = comparison.b.at;
  return incident_title(place) + ", A against B";
}

std::vector<std::string> incident_compare_answer(const IncidentComparison& comparison, site::Display display,
                                                 Glyphs glyphs) {
  return Answer(comparison, display, glyphs).tell();
}

}  // namespace forecourse::report
