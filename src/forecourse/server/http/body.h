#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/report/json_document.h"
#include "forecourse/server/answers/answers.h"

namespace forecourse::server {

constexpr std::size_t largest_body = std::size_t{4} << 20U;  ///< bytes
constexpr int deepest_body = 32;                             ///< brackets in brackets

/// The JSON of a body; empty where it is none, or where brackets stand too deep in brackets.
[[nodiscard]] std::optional<report::Json> read_body(std::string_view text);

/// Takes members out of a body. What is wrong is kept; the first thing counts. Each member must be there.
class BodyReader {
 public:
  explicit BodyReader(const report::Json& body);

  [[nodiscard]] std::string text(const char* key);
  /// A text of at most 200 bytes, for what the user calls a step.
  [[nodiscard]] std::string label(const char* key);
  [[nodiscard]] int revision();
  /// A list; empty where it may be missing and is.
  [[nodiscard]] std::vector<report::Json> list(const char* key, bool may_be_missing);
  [[nodiscard]] std::vector<Edit> edits(bool may_be_missing);

  void refuse(const std::string& error, const std::string& hint);
  [[nodiscard]] bool good() const { return error_.empty(); }
  [[nodiscard]] const std::string& error() const { return error_; }
  [[nodiscard]] const std::string& hint() const { return hint_; }

 private:
  [[nodiscard]] const report::Json* find(const char* key);
  [[nodiscard]] Edit edit(const report::Json& json);

  const report::Json& body_;
  std::string error_;
  std::string hint_;
};

}  // namespace forecourse::server
