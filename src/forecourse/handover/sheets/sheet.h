#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/default_used.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/base/quantity_kind.h"
#include "forecourse/site/records/test.h"

namespace forecourse::handover {

/// The sheets that are handed over, in their order.
enum class SheetKind { commissioning, thirty_day, annual, return_to_service, delivery_card, emergency_card };
inline constexpr std::array<SheetKind, 6> all_sheet_kinds{SheetKind::commissioning, SheetKind::thirty_day,
                                                          SheetKind::annual,        SheetKind::return_to_service,
                                                          SheetKind::delivery_card, SheetKind::emergency_card};
/// "commissioning", "thirty-day", "annual", "return-to-service", "delivery-card", "emergency-card"
[[nodiscard]] const char* word(SheetKind kind);
[[nodiscard]] std::optional<SheetKind> sheet_kind(std::string_view id);
/// All of these words.
[[nodiscard]] std::vector<std::string> sheet_kind_words();

/// What is written into a row by hand.
enum class Blank {
  none,       ///< the row tells something, or is a step
  amount,     ///< a number with its unit
  yes_no,     ///< yes or no
  text,       ///< words
  signature,  ///< who, and when
};
/// "none", "amount", "yes-no", "text", "signature"
[[nodiscard]] const char* word(Blank blank);

/// What an amount is of, which decides the units in which it is shown and typed.
enum class Amount {
  none,
  flow,
  leak,
  caught,  ///< volume that a simulated leak gives in a minute
  pressure,
  vapor_pressure,
  vapor_leak,
  depth,   ///< a short length: inches, millimeters
  height,  ///< a long one: feet, meters
  volume,
  draw,  ///< error of a meter in a draw
  share,
  time,
  temperature,
  resistance,  ///< [ohm]
  count,
};
/// "flow", "vapor-pressure" ...
[[nodiscard]] const char* word(Amount amount);
/// SI unit: "m3/s", "Pa"; of a count none.
[[nodiscard]] const char* unit_of(Amount amount);
/// As which a typed text is read; null: a bare number.
[[nodiscard]] const QuantityKind* quantity_of(Amount amount);

/// A figure that a row tells beside its value.
struct SheetFigure {
  std::string label;
  Amount amount = Amount::none;
  double value = 0.0;  ///< SI
};

/// What stands in place of a tolerance that nobody has agreed on yet.
inline constexpr const char* to_be_agreed = "to be agreed";
/// What stands there where none is needed.
inline constexpr const char* the_limit_alone = "the limit alone";

/// How far a reading may lie from the value.
struct Tolerance {
  std::optional<double> low;  ///< [SI] least reading; both empty: there is none
  std::optional<double> high;
  std::string source;  ///< "spread of the values entered", "agreed", or one of the two above

  [[nodiscard]] bool known() const { return low && high; }
  /// Whether there has to be one and is not: a limit alone then decides nothing.
  [[nodiscard]] bool open() const { return !known() && source == to_be_agreed; }
};

/// What a requirement asks of a reading.
struct RowLimit {
  std::string words;               ///< of the requirement; empty: none is known
  std::optional<double> at_least;  ///< [SI]
  std::optional<double> at_most;
  bool strict = false;  ///< the limit itself does not meet
  std::string clause;
  std::string edition;
  bool verified = false;  ///< the text of the clause was seen
  bool binds = false;     ///< of a rule set that the site names; else of one, or of a practice, that it does not name
};

/// A row: what is to be read, beside what was computed or entered; or a step; or something told.
struct SheetRow {
  std::string id;      ///< of its kind, the same on every station: "flow-alone"
  std::string what;    ///< in words; with section and part it is one row of its sheet
  std::string part;    ///< id of the part, as records call it; empty: the station
  std::string path;    ///< of the part in the site file: "hose.D1.a"
  std::string effect;  ///< of a row of a matrix: its column
  Blank blank = Blank::none;
  Amount amount = Amount::none;
  std::optional<double> value;       ///< [SI]
  std::string value_by;              ///< "flow study", "entered"
  std::string words;                 ///< what is entered, or known, where it is no amount
  std::vector<SheetFigure> figures;  ///< told beside the value
  std::optional<bool> expected;      ///< the answer that is in order
  std::string missing;               ///< why there is no value, and what to enter
  std::string rests_on;              ///< an unpublished default that the value rests on; empty: none
  Tolerance tolerance;               ///< of the value
  RowLimit limit;
  std::string who;                              ///< by whom it is done
  std::optional<site::records::TestKind> test;  ///< the reading is kept as this test of the part
  /// A test of the part that cannot be passed where this reading is outside.
  std::optional<site::records::TestKind> reading_of;
  SourceSpan where{};  ///< of the part in the site file
};

/// Rows that belong together.
struct SheetSection {
  std::string id;
  std::string title;
  std::vector<std::string> notes;    ///< sentences above the rows
  bool ordered = false;              ///< its rows are steps, in their order
  std::vector<std::string> effects;  ///< columns of a matrix; none: it is a list
  std::vector<SheetRow> rows;
};

/// One sheet, to be printed and filled in.
struct Sheet {
  SheetKind kind = SheetKind::commissioning;
  std::string title;
  std::vector<std::string> first;     ///< what to do before anything else, in large type; empty: nothing
  std::vector<std::string> cautions;  ///< at least one
  std::vector<SheetSection> sections;
};

/// The tolerances that a user agrees on; of a value whose study states its spread that spread counts.
struct AgreedTolerances {
  std::optional<double> flow;      ///< [1] share of the computed flow
  std::optional<double> pressure;  ///< [Pa]
  std::optional<double> height;    ///< [m]
};

struct SheetOptions {
  std::vector<SheetKind> kinds;  ///< empty: all
  AgreedTolerances agreed;
};

/// All sheets of a station.
struct SheetPack {
  std::string version;
  site::Date day;  ///< for which it is made
  SheetOptions options;
  std::vector<Sheet> sheets;
  std::vector<DefaultUsed> defaults;
  std::vector<Diagnostic> warnings;
};

}  // namespace forecourse::handover
