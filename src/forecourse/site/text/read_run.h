#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/site/text/document.h"

namespace forecourse::site {

/// What the readers of one text share.
struct ReadRun {
  std::string_view text;                 ///< the whole text, to quote values as written
  std::vector<Diagnostic>& diagnostics;  ///< where all trouble goes
  std::vector<SourceSpan>& half_read;    ///< tables in which a value could not be read
  std::vector<SourceSpan>& uncertain;    ///< values with a spread
  bool complete = true;                  ///< nothing was passed over, so what is missing is missing

  void error(SourceSpan where, std::string message, std::string hint = {}) const {
    diagnostics.push_back({Severity::error, std::move(message), where, std::move(hint), {}});
  }
  void warn(SourceSpan where, std::string message, std::string hint = {}) const {
    diagnostics.push_back({Severity::warning, std::move(message), where, std::move(hint), {}});
  }
  /// A value as written; a long one is cut, as by `shortened`.
  [[nodiscard]] std::string written(const Node& node) const;
};

/// The first line of a stretch of text for a message, cut when it is long.
[[nodiscard]] std::string shortened(std::string_view text);

/// "a text", "a number", "a table" ...
[[nodiscard]] std::string_view noun_of(NodeKind kind);

/// "did you mean 'bore'?" with the nearest of the known words, or all of them.
[[nodiscard]] std::string offer(std::string_view word, const std::vector<std::string_view>& known,
                                std::string_view list_intro);

/// "there are: P1, P2"; a long list is cut.
[[nodiscard]] std::string list_of(const std::vector<std::string_view>& known, std::string_view intro);

/// A word that names something this program does not deal with ("suction", "lpg" ...); empty when it is none.
/// \return a sentence about it
[[nodiscard]] std::string out_of_scope(std::string_view word);

}  // namespace forecourse::site
