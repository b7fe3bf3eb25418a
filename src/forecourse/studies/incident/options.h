#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/site/site.h"

namespace forecourse::studies {

/// What goes wrong. The words are those of the command and of the site file.
enum class IncidentKind { struck, drive_off, sump_fire, crack, line_break, overfill, nozzle_left_open };

/// The word of a kind: "struck", "drive-off".
[[nodiscard]] const char* word(IncidentKind kind);
[[nodiscard]] std::optional<IncidentKind> incident_kind(const std::string& word);

/// What stands between an incident and a loss.
enum class Barrier {
  shear_valve,     ///< shuts when the dispenser is struck
  upper_poppet,    ///< the second poppet: holds what is in the dispenser
  crack_trip,      ///< shuts the shear valve when its groove leaks
  fusible_link,    ///< shuts the shear valve in a fire
  breakaway,       ///< parts the hose and shuts both ends
  sump_sensor,     ///< stops the pump, or tells somebody
  leak_detector,   ///< restricts or stops a line that leaks
  emergency_stop,  ///< somebody presses it
  check_valve,     ///< keeps the line from running back
  sump,            ///< holds what leaks
  overfill_valve,
  overfill_alarm,
  driver,  ///< watches the delivery and stops it
};

/// The trade's word, as `--without` and `--dead` take it: "shear-valve".
[[nodiscard]] const char* word(Barrier barrier);
[[nodiscard]] std::optional<Barrier> barrier(const std::string& word);
[[nodiscard]] std::vector<std::string> barrier_words();

/// The barriers that a kind of incident can meet.
[[nodiscard]] std::vector<Barrier> barriers_of(IncidentKind kind);

/// A barrier that does nothing for a time after the incident begins.
struct DeadBarrier {
  Barrier barrier = Barrier::sump_sensor;
  std::optional<double> dead_for;  ///< [s]; empty: to the end
};

/// What is asked. What is empty is taken from the site file's [[incident]] of the same kind (and `id`, if given), and
/// where that has nothing either, from the list of illustrative values in the result's defaults.
struct IncidentOptions {
  IncidentKind kind = IncidentKind::struck;
  site::IncidentRequest request = {};  ///< the file's, with what the command line puts over it
  bool none_open = false;              ///< no hose is open elsewhere, whatever the file says

  std::vector<Barrier> without = {};   ///< not there
  std::vector<DeadBarrier> dead = {};  ///< there, and does not act
  std::size_t runs = 0;                ///< of a Monte Carlo; 0: none
  std::uint64_t seed = 1;
  bool barrier_table = true;  ///< run once more without each barrier
  bool charts = true;         ///< keep what charts need
  /// The day of the study, by which tests are judged overdue. Empty: only whether a test is on record is judged.
  std::optional<site::Date> today = {};
};

}  // namespace forecourse::studies
