#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::studies {

/// For which meters a limit is: every one, those in use, or new and newly adjusted ones.
enum class LimitFor { all, maintenance, acceptance };
/// "all", "maintenance", "acceptance"
[[nodiscard]] const char* word(LimitFor of);

/// How well the text of a limit is known.
enum class LimitSeen {
  verified,  ///< its text was read
  derived,   ///< seen in texts that print it, not in its own
  memory,    ///< from memory: it decides nothing
  entered,   ///< the user's own
};
/// "verified", "seen in derived texts", "from memory, not verified", "entered"
[[nodiscard]] const char* word(LimitSeen seen);

/// A limit on the error of a meter: a share of the volume, or a volume for each draft, or for any draft a volume and
/// so much more for each volume.
struct MeterLimit {
  std::string name;
  std::optional<double> share;   ///< [1]
  std::optional<double> volume;  ///< [m3] for a draft of `draft`
  double draft = 0.0;            ///< [m3]
  bool in_proportion = false;    ///< for other drafts in proportion; else it is for this draft alone
  double base = 0.0;             ///< [m3] of a limit by formula, with `share` for each volume
  double least = 0.0;            ///< [m3] smaller drafts are not under it
  double most = std::numeric_limits<double>::infinity();  ///< [m3] nor larger ones
  LimitFor of = LimitFor::all;
  std::string clause;
  std::string edition;
  LimitSeen seen = LimitSeen::entered;
  bool applies = true;  ///< to this station, by its rules
  std::string words;    ///< what else is to be known of it
};

/// What a limit allows for a draft.
/// \param draft [m3]
/// \return [m3]; empty: the limit is not for such a draft
/// \source closed form
[[nodiscard]] std::optional<double> allowed(const MeterLimit& limit, double draft);

/// The published limits. Those of the United States apply unless the rules of the station name `eu`, those of the
/// European Union where they do.
/// \source [cfr_280, 43(a)]; [nist_handbook_44, 3.30, from memory and from texts of states]; [mid_2014_32, annex VII,
///         table 2]
[[nodiscard]] std::vector<MeterLimit> published_limits(const site::Site& site);

}  // namespace forecourse::studies
