#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace forecourse::server {

/// What makes one text of another: at one place, some bytes go out and others come in.
struct Change {
  std::size_t at = 0;
  std::string out;
  std::string in;
};

/// The shortest single change from `a` to `b`.
[[nodiscard]] Change change_between(std::string_view a, std::string_view b);

/// The text after a change; empty where the change does not fit the text.
[[nodiscard]] std::optional<std::string> forward(const Change& change, const std::string& text);

/// The text before a change; empty where the change does not fit the text.
[[nodiscard]] std::optional<std::string> backward(const Change& change, const std::string& text);

}  // namespace forecourse::server
