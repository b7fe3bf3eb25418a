#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "forecourse/base/quantity_kind.h"
#include "forecourse/site/fields/rules.h"
#include "forecourse/site/text/read_run.h"

namespace forecourse::site {

/// Reads single values of a site file. Each function tells what is wrong and gives nothing then.
/// `key` is the name by which messages call the value.
class ValueReader {
 public:
  explicit ValueReader(const ReadRun& run) : run_(run) {}

  /// A quantity with its unit, plain or as `{ low, likely, high }`. [SI]
  [[nodiscard]] std::optional<Entered<double>> quantity(std::string_view key, const Node& node,
                                                        const QuantityKind& kind, const Range& range) const;
  /// A number without a unit, plain or as `{ low, likely, high }`.
  [[nodiscard]] std::optional<Entered<double>> number(std::string_view key, const Node& node, const Range& range) const;
  /// A quantity without a spread. [SI]
  [[nodiscard]] std::optional<double> plain_quantity(std::string_view key, const Node& node,
                                                     const QuantityKind& kind) const;
  /// A coefficient of a pump curve, of `power` in flow. [Pa (s/m3)^power]
  [[nodiscard]] std::optional<double> coefficient(std::string_view key, const Node& node, int power) const;

  [[nodiscard]] std::optional<bool> fact(std::string_view key, const Node& node) const;
  [[nodiscard]] std::optional<Date> date(std::string_view key, const Node& node) const;
  /// A text that is not empty.
  [[nodiscard]] std::optional<Name> name(std::string_view key, const Node& node) const;
  [[nodiscard]] std::optional<Name> id(std::string_view key, const Node& node, IdRule rule) const;
  /// A time of day, "06:00".
  [[nodiscard]] std::optional<Name> clock(std::string_view key, const Node& node) const;
  /// One of these words; its index.
  [[nodiscard]] std::optional<std::size_t> word(std::string_view key, const Node& node,
                                                const std::vector<std::string_view>& words) const;
  [[nodiscard]] std::vector<Name> names(std::string_view key, const Node& node) const;
  /// The items of a list, or nothing but trouble told.
  [[nodiscard]] const std::vector<Node>* list(std::string_view key, const Node& node, std::string_view what) const;

 private:
  struct ScalarRule;
  [[nodiscard]] std::optional<double> scalar(std::string_view key, const Node& node, const ScalarRule& rule) const;
  [[nodiscard]] std::optional<Entered<double>> spread(std::string_view key, const Node& node,
                                                      const ScalarRule& rule) const;
  [[nodiscard]] std::optional<Entered<double>> spread_table(std::string_view key, const Node& node,
                                                            const ScalarRule& rule) const;
  /// A number that was written without a unit.
  [[nodiscard]] std::optional<double> finite(std::string_view key, const Node& node, std::string_view noun) const;
  [[nodiscard]] bool in_range(std::string_view key, const Node& node, double value, const Range& range) const;
  void wrong_kind(std::string_view key, const Node& node, std::string_view noun, std::string hint) const;

  const ReadRun& run_;
};

/// True for `{ low = ..., likely = ..., high = ... }`.
[[nodiscard]] bool is_spread(const Node& node);

}  // namespace forecourse::site
