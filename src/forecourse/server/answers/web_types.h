#pragma once

#include <span>
#include <string>
#include <string_view>

namespace forecourse::server {

/// A member of what the workbench's page is told, and its type in TypeScript.
struct TypeMember {
  std::string_view name;
  std::string_view type;
  std::string_view help = "";
};

/// An interface of TypeScript.
struct TypeShape {
  std::string_view name;
  std::span<const TypeMember> members;
};

/// The shapes of what `station_json` and `diagnostics_json` give; a test holds these against each other.
[[nodiscard]] std::span<const TypeShape> told_shapes();

/// All types that page and program share, as a file of TypeScript: what is told, edits, and wants with the words of
/// their closed lists.
[[nodiscard]] std::string web_types();

}  // namespace forecourse::server
