#pragma once

#include "forecourse/network/meter/meter_draw.h"

namespace forecourse::network {

/// What several draws say together.
struct DrawSet {
  int count = 0;
  std::optional<double> mean;            ///< [1] of their errors
  std::optional<double> deviation;       ///< [1] empty: fewer than two
  std::optional<double> standard_error;  ///< [1] of the mean, by their scatter alone; likewise
  std::optional<double> repeatability;   ///< [1] largest error less smallest; likewise
};

/// The draws of one meter on one day in one state.
struct MeterProving {
  std::string hose;
  site::Date day;
  bool as_left = false;          ///< after a change of the meter
  std::vector<MeterDraw> draws;  ///< in the order of time
  DrawSet all;
  std::optional<DrawSet> fast;  ///< where every draw has a flow: from half of the largest on
  std::optional<DrawSet> slow;

  /// What counts for what the meter sells: the fast draws, else all.
  [[nodiscard]] const DrawSet& counted() const { return fast ? *fast : all; }
};

/// True for the draws of a meter as it was left after a change.
[[nodiscard]] bool is_as_left(const site::records::Proving& draw);

/// The provings of every meter, by hose, then by day; on one day what was found comes before what was left.
/// Slow is below half of the largest flow of the proving: common practice, no source.
/// \source closed form (mean, deviation)
[[nodiscard]] std::vector<MeterProving> meter_provings(const site::Site& site,
                                                       const std::vector<site::records::Proving>& draws,
                                                       const std::optional<double>& expansion);

}  // namespace forecourse::network
