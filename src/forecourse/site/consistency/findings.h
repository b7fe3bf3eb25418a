#pragma once

#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"

namespace forecourse::site {

/// What the checks of this folder tell.
struct Findings {
  std::vector<Diagnostic> all;

  Diagnostic& error(SourceSpan where, std::string message, std::string hint = {}) {
    return all.emplace_back(Diagnostic{Severity::error, std::move(message), where, std::move(hint), {}});
  }
  Diagnostic& warn(SourceSpan where, std::string message, std::string hint = {}) {
    return all.emplace_back(Diagnostic{Severity::warning, std::move(message), where, std::move(hint), {}});
  }
};

/// A second place to look at.
inline void relate(Diagnostic& diagnostic, SourceSpan where, std::string message) {
  diagnostic.related.push_back({Severity::note, std::move(message), where, {}, {}});
}

}  // namespace forecourse::site
