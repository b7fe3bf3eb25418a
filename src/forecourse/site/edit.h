#pragma once

#include <string>
#include <string_view>

#include "forecourse/base/diagnostic.h"

namespace forecourse::site {

// Edits of a site file. They touch the bytes of one value and nothing else: comments, order, blanks and every other
// value stay as they were written.
//
// A path names a value by keys and ids: "site.name", "line.trunk.bore", "tank.T1.shape.length",
// "dispenser.D1.hose.D1.a.limiter" (ids may hold dots: the longest one that fits is meant),
// "dispenser.D1.inlet.regular.riser.length" (what has no id is called by its product, or by its number from 1).

/// Sets a value. Where the key is missing it is added after the last key of its table.
///
/// \param value as it would stand in the file, or a text without its quotes: `3 in`, `"3 in"`, `3.6`, `{ k = 2 }`
/// \return the new text. Refused edits give the text as it was and say why: the path leads nowhere, or the value
///         cannot be read there.
[[nodiscard]] Parsed<std::string> set_value(std::string_view text, std::string_view path, std::string_view value);

/// Sets one value at every place a path stands for. A star is every item of a list: "line.*.bore",
/// "dispenser.*.hose.*.limiter"; "hose.*.limiter" and "inlet.regular.riser.bore" are short for those of every
/// dispenser, "hose.D1.a.limiter" for the one hose of that name.
///
/// \return as `set_value`. A path that leads nowhere is told with the nearest one that leads to something.
[[nodiscard]] Parsed<std::string> set_everywhere(std::string_view text, std::string_view path, std::string_view value);

/// Removes a key with its value, or a whole table or list item with all that stands under its header.
[[nodiscard]] Parsed<std::string> remove_value(std::string_view text, std::string_view path);

/// The bytes of a value as written, by its path; for forms that show what can be edited.
[[nodiscard]] Parsed<std::string> value_at(std::string_view text, std::string_view path);

}  // namespace forecourse::site
