#include "forecourse/lesson/told.h"

#include <array>
#include <cstddef>

namespace forecourse::lesson {
namespace {

struct QuantityWords {
  const char* word;
  const char* unit;
};

/// One row for each Quantity.
constexpr std::array<QuantityWords, 18> quantity_words{{{"flow", "m3/s"},
                                                        {"leak", "m3/s"},
                                                        {"volume", "m3"},
                                                        {"pressure", "Pa"},
                                                        {"ullage-pressure", "Pa"},
                                                        {"length", "m"},
                                                        {"bore", "m"},
                                                        {"velocity", "m/s"},
                                                        {"time", "s"},
                                                        {"temperature", "K"},
                                                        {"temperature-difference", "K"},
                                                        {"force", "N"},
                                                        {"angle", "rad"},
                                                        {"heat", "W"},
                                                        {"mass", "kg"},
                                                        {"share", "1"},
                                                        {"count", "1"},
                                                        {"money", "1"}}};

const QuantityWords& words_of(Quantity quantity) { return quantity_words.at(static_cast<std::size_t>(quantity)); }

}  // namespace

const char* unit(Quantity quantity) { return words_of(quantity).unit; }

const char* word(Quantity quantity) { return words_of(quantity).word; }

}  // namespace forecourse::lesson
