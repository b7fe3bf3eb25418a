#pragma once

#include <string>

namespace forecourse {

/// A text that was read in this run; `SourceSpan::text` is its place in the list.
struct SourceText {
  std::string name;  ///< as the user gave it
  std::string text;
};

}  // namespace forecourse
