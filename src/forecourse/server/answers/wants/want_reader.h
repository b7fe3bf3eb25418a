#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/report/json_document.h"
#include "forecourse/server/answers/wants/want_members.h"

namespace forecourse::server {

/// Why there is no answer.
[[nodiscard]] report::Json refused(const std::string& error, const std::string& hint = {});

/// The first error of some diagnostics as a refusal that says how many more there are.
[[nodiscard]] report::Json refused(const std::vector<Diagnostic>& problems);

/// Reads the members of a want. What is wrong is kept; the first thing counts. A member that is missing or null is
/// empty.
class WantReader {
 public:
  /// \param known every member that the want may have
  WantReader(const report::Json& want, std::span<const WantMember> known);

  [[nodiscard]] bool has(std::string_view key) const { return find(key) != nullptr; }
  [[nodiscard]] std::string text(std::string_view key);
  /// One of some words.
  [[nodiscard]] std::string word(std::string_view key, const std::vector<std::string>& words);
  /// A list of texts; a text alone is a list of one.
  [[nodiscard]] std::vector<std::string> texts(std::string_view key);
  /// A whole number, zero or more.
  [[nodiscard]] std::optional<std::uint64_t> count(std::string_view key);
  /// A number within limits.
  [[nodiscard]] std::optional<double> number(std::string_view key, double low, double high);
  /// Sets of ids: a word or ids parted by commas, a list of ids, or a list of such lists.
  [[nodiscard]] std::vector<std::string> id_sets(std::string_view key);

  [[nodiscard]] bool good() const { return problem_.is_null(); }
  /// What is wrong, as an answer.
  [[nodiscard]] const report::Json& problem() const { return problem_; }
  void refuse(const std::string& error, const std::string& hint);

 private:
  [[nodiscard]] const report::Json* find(std::string_view key) const;
  void wrong_kind(std::string_view key, const char* wanted, const char* example);

  const report::Json& want_;
  report::Json problem_;
};

}  // namespace forecourse::server
