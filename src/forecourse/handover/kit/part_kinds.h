#pragma once

#include <span>
#include <string_view>

namespace forecourse::handover {

/// What presses on a part.
enum class Bears {
  fuel,   ///< the pressure of the pump
  vapor,  ///< the settings of the vent valve
  nothing,
};

/// What it means that a part fails, the worst first.
enum class Consequence {
  product_stops,  ///< no hose of a product is left
  fuel_escapes,   ///< fuel or vapor gets out, or is not stopped when it does
  hoses_stop,     ///< some hoses are shut
  leak_unseen,    ///< what watches is blind
  other,
};
[[nodiscard]] const char* word(Consequence consequence);

/// How the hoses hang on a part.
enum class Serves {
  nothing,   ///< no hose needs it to go on
  own_hose,  ///< the hose that it is part of
  inlet,     ///< the hoses that draw through the dispenser's inlet that it is part of
  pump,      ///< the hoses that no other pump can feed
};

/// A kind of part, in the words of a schedule.
struct PartKind {
  std::string_view kind;      ///< of StationPart
  std::string_view noun;      ///< "shear valve"
  std::string_view function;  ///< what it does, in one sentence
  Bears bears = Bears::nothing;
  std::string_view listed_ul = {};  ///< figure of the rule sets that asks for its listing
  std::string_view listed_en = {};
  bool is_pipe = false;  ///< ordered by length
  bool is_spare = false;
  Consequence fails = Consequence::other;
  Serves serves = Serves::nothing;
  std::string_view without_it = {};  ///< what goes on while it is out, where that is worth a word
};

/// Whether fuel or its vapor can touch such a part, so that it must be compatible.
[[nodiscard]] bool is_wetted(const PartKind& kind);

/// Every kind, in the order of the course.
[[nodiscard]] std::span<const PartKind> part_kinds();

/// Null where there is none.
[[nodiscard]] const PartKind* find_part_kind(std::string_view kind);

}  // namespace forecourse::handover
