#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/network/meter/meter_proving.h"
#include "forecourse/site/records/records.h"
#include "forecourse/studies/book_meters.h"
#include "forecourse/studies/meter/options.h"

namespace forecourse::studies {

/// A draw, or the worst of several, against one limit, in both forms.
struct MeterJudged {
  std::size_t limit = 0;                ///< of MeterResult::limits
  double draft = 0.0;                   ///< [m3]
  std::optional<double> allowed;        ///< [m3]; empty: the limit is not for such a draft
  std::optional<double> allowed_share;  ///< [1] of the draft
  double error_volume = 0.0;            ///< [m3]
  double error = 0.0;                   ///< [1]
  std::optional<bool> within;           ///< in the form of the limit
};

/// The worst draw of a proving against one limit: of those that it is for, else of all.
struct WorstDraw {
  std::size_t draw = 0;
  MeterJudged judged;
};

/// A proving with its draws, each against every limit of its state; where its state is not told, against all.
struct ProvingTold {
  network::MeterProving proving;
  Day day;
  std::optional<std::size_t> worst;             ///< of its draws: the largest error on either side
  std::vector<std::vector<MeterJudged>> draws;  ///< of each draw; empty: it has no error
  std::vector<WorstDraw> against;               ///< of each limit that is for its state
  bool state_told = false;                      ///< of each draw: as found or as left
  bool lost = false;                            ///< one of its draws has no error
};

inline constexpr double days_of_year = 365.25;  ///< closed form: the Julian year

/// The course of the error over the provings since the meter was last changed.
struct MeterDrift {
  std::string problem;  ///< why nothing is told; empty: something is
  int provings = 0;
  std::vector<double> x;                 ///< [d] since 1970-01-01, or [m3] of its totalizer
  std::vector<double> error;             ///< [1]
  std::optional<double> slope;           ///< [1/d] or [1/m3]
  std::optional<double> standard_error;  ///< likewise
  std::optional<double> share;           ///< [1] limit that it is followed to
  std::optional<double> earliest;        ///< x at which it may reach the limit, with confidence 0.9 between both
  std::optional<double> latest;          ///< empty with `earliest`: not as far as the provings carry
  double horizon = 0.0;                  ///< x up to which they carry: as long again as they span
  bool told_apart = false;               ///< the slope from none
};

/// What the error costs in a year.
struct MeterYear {
  std::optional<double> volume;  ///< [m3] sold in a year; empty: not known
  std::string words;             ///< how it was come by, or what to enter
  int days = 0;                  ///< of records that it rests on; 0: entered
  std::optional<double> error;   ///< [m3] told above given
  std::optional<double> money;
  std::string currency;
  std::string price_words;  ///< what to enter where there is no money
};

/// One meter: its hose.
struct MeterTold {
  std::string hose;
  std::string product;  ///< of a blended hose its products
  SourceSpan where{};
  std::vector<ProvingTold> provings;  ///< in the order of time
  std::optional<double> error;        ///< [1] of the last proving: its fast draws, else all
  std::optional<double> standard_error;
  std::string who_loses;  ///< in words
  MeterYear year;
  MeterDrift by_time;
  MeterDrift by_volume;
};

/// What a meter adds to the difference of a book.
struct MeterShare {
  MeterSold sold;
  std::optional<double> error;  ///< [1] of what it sold; empty: not proved
  std::optional<double> alone;  ///< [1] error by which it alone would explain what is left; of one that is not proved
};

/// Which meters explain the difference of a book.
struct MetersOfBook {
  BookMeters book;
  std::vector<MeterShare> shares;  ///< those that add most first, then those that are not proved by what they sold
  double explained = 0.0;          ///< [m3] by all that are proved
  double left = 0.0;               ///< [m3]
};

struct MeterResult {
  std::string version;
  MeterOptions options;
  std::vector<MeterLimit> limits;
  std::vector<MeterTold> meters;      ///< that were proved, in the order of the site file
  std::vector<std::string> unproved;  ///< ids of the other hoses
  std::vector<MetersOfBook> books;
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
};

/// Proving draws with temperature taken into account, against limits in both forms; volume and money a year; drift
/// over provings; which meters explain the difference of a ledger.
///
/// \param books of the ledger of the period (book_meters in ledger.h); empty: no ledger was made
/// \error of the reading of the measure and of the temperatures; see docs/theory/meter.md
/// \fails whatever is not known is left out and told, in `left_out` of a draw and in the words beside a value
[[nodiscard]] MeterResult study_meter(const site::Site& site, const site::records::Records& records,
                                      const MeterOptions& options, const std::vector<BookMeters>& books,
                                      const Context& context = {});

/// What of the options the station has not.
[[nodiscard]] std::vector<Diagnostic> check_options(const site::Site& site, const MeterOptions& options);

/// What is wrong with draws that somebody has just written: nothing is left out of them without a word.
[[nodiscard]] std::vector<Diagnostic> check_draws(const site::Site& site,
                                                  const std::vector<site::records::Proving>& draws);

}  // namespace forecourse::studies
