#include "forecourse/checks/rules/bound_rules.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <stdexcept>

#include "forecourse/base/decimal.h"
#include "forecourse/base/nearest_word.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/site/rules/read_rule_set.h"

namespace forecourse::checks {
namespace {

class Binder {
 public:
  explicit Binder(const site::RuleSet& set) : set_(set) {}

  Parsed<std::vector<BoundRequirement>> bind() {
    std::set<std::string> ids;
    for (const site::Requirement& one : set_.requirements) {
      if (!ids.insert(one.id.text).second) error(one.id.where, "there are two requirements '" + one.id.text + "'", "");
      bind(one);
    }
    return std::move(out_);
  }

 private:
  void error(SourceSpan where, std::string message, std::string hint) {
    out_.diagnostics.push_back({Severity::error, std::move(message), where, std::move(hint), {}});
  }

  const Figure* figure_of(const site::Name& name) {
    const Figure* found = find_figure(name.text);
    if (found != nullptr || name.empty()) return found;
    std::vector<std::string_view> known;
    for (const Figure& one : figures()) known.push_back(one.id);
    const auto near = nearest_word(name.text, std::span<const std::string_view>(known));
    error(name.where, "there is no figure '" + name.text + "'",
          near ? "did you mean '" + std::string(*near) + "'?" : "`forecourse checks --figures` lists them");
    return nullptr;
  }

  void does_not_fit(const Figure& figure, std::string_view key, SourceSpan where) {
    error(where, fmt::format("{} does not fit '{}', which is {}", key, figure.id, kind_words(figure)), hint_of(figure));
  }

  void one_of(std::string_view key, const site::Name& written, std::string_view strict_key, const site::Name& strict) {
    if (written.empty() || strict.empty()) return;
    error(strict.where, fmt::format("{} and {} are both given", key, strict_key),
          fmt::format("{} is the stricter: its limit itself does not meet", strict_key));
  }

  std::optional<double> amount(const Figure& figure, std::string_view key, const site::Name& written) {
    if (written.empty()) return std::nullopt;
    if (figure.kind != FigureKind::amount) {
      does_not_fit(figure, key, written.where);
      return std::nullopt;
    }
    if (figure.quantity == nullptr) return count(figure, key, written);
    const auto read = read_quantity(written.text, *figure.quantity);
    if (const auto* fault = std::get_if<UnitTextError>(&read)) {
      error(written.where, fmt::format("{} {}", key, fault->message), fault->hint);
      return std::nullopt;
    }
    return std::get<double>(read);
  }

  std::optional<double> count(const Figure& figure, std::string_view key, const site::Name& written) {
    if (const std::optional<double> read = read_decimal(written.text)) return read;
    error(written.where, fmt::format("{} is \"{}\", but '{}' is a count", key, written.text, figure.id),
          "write a number without a unit: \"2\"");
    return std::nullopt;
  }

  static const char* kind_words(const Figure& figure) {
    if (figure.kind == FigureKind::fact) return "a fact";
    return figure.kind == FigureKind::day ? "a day" : "an amount";
  }
  static const char* hint_of(const Figure& figure) {
    if (figure.kind == FigureKind::fact) return "write is = true";
    return figure.kind == FigureKind::day ? "write every = \"3 years\"" : "write at_least or at_most with a unit";
  }

  void bind(const site::Requirement& entered) {
    BoundRequirement bound;
    bound.entered = &entered;
    bound.set = &set_;
    bound.figure = figure_of(entered.figure);
    for (const site::Condition& condition : entered.when) bind(condition, bound);
    if (bound.figure == nullptr) return;
    const Figure& figure = *bound.figure;
    bound.is_above = !entered.above.empty();
    bound.is_below = !entered.below.empty();
    one_of("at_least", entered.at_least, "above", entered.above);
    one_of("at_most", entered.at_most, "below", entered.below);
    bound.at_least =
        bound.is_above ? amount(figure, "above", entered.above) : amount(figure, "at_least", entered.at_least);
    bound.at_most =
        bound.is_below ? amount(figure, "below", entered.below) : amount(figure, "at_most", entered.at_most);
    if (entered.is && figure.kind != FigureKind::fact) does_not_fit(figure, "is", entered.where);
    if (!entered.every.empty() && figure.kind != FigureKind::day) does_not_fit(figure, "every", entered.every.where);
    if (!entered.every.empty()) {
      bound.every = read_period(entered.every.text);
      if (!bound.every) {
        error(entered.every.where, "every is \"" + entered.every.text + "\"",
              "write a number of years, months or days: \"3 years\"");
      }
    }
    const bool fits = (figure.kind == FigureKind::fact && entered.is) ||
                      (figure.kind == FigureKind::day && !entered.every.empty()) || figure.kind == FigureKind::amount;
    const bool told = entered.is || !entered.every.empty() || !entered.at_least.empty() || !entered.at_most.empty() ||
                      bound.is_above || bound.is_below;
    if (!fits && !told) {
      error(entered.where,
            fmt::format("the requirement '{}' is on '{}', which is {}", entered.id.text, figure.id, kind_words(figure)),
            hint_of(figure));
    }
    if (bound.at_least && bound.at_most && *bound.at_most < *bound.at_least) {
      error(bound.is_below ? entered.below.where : entered.at_most.where, "at_most is below at_least", "");
    }
    out_.value.push_back(std::move(bound));
  }

  void bind(const site::Condition& entered, BoundRequirement& bound) {
    BoundCondition out;
    out.figure = figure_of(entered.figure);
    if (out.figure == nullptr) return;
    out.is = entered.is;
    out.above = amount(*out.figure, "above", entered.above);
    out.up_to = amount(*out.figure, "up_to", entered.up_to);
    out.after = entered.after;
    out.by = entered.by;
    const bool of_fact = out.figure->kind == FigureKind::fact && out.is;
    const bool of_amount = out.figure->kind == FigureKind::amount && !(entered.above.empty() && entered.up_to.empty());
    const bool of_day = out.figure->kind == FigureKind::day && (out.after || out.by);
    if (!of_fact && !of_amount && !of_day) {
      error(entered.where,
            fmt::format("the condition is on '{}', which is {}", out.figure->id, kind_words(*out.figure)),
            "a fact has is, an amount above or up_to, a day after or by");
      return;
    }
    bound.when.push_back(out);
  }

  const site::RuleSet& set_;
  Parsed<std::vector<BoundRequirement>> out_;
};

}  // namespace

Parsed<std::vector<BoundRequirement>> bind(const site::RuleSet& set) { return Binder(set).bind(); }

std::vector<Diagnostic> check_rule_names(const site::Site& site, std::span<const site::RuleSet> own) {
  std::vector<std::string_view> known;
  for (const site::RuleSet& set : site::built_in_rule_sets()) known.push_back(set.id.text);
  for (const site::RuleSet& set : own) known.push_back(set.id.text);
  std::vector<Diagnostic> out;
  for (const site::Name& name : site.rules) {
    if (std::find(known.begin(), known.end(), name.text) != known.end()) continue;
    const auto near = nearest_word(name.text, std::span<const std::string_view>(known));
    out.push_back({Severity::error,
                   "there is no rule set '" + name.text + "'",
                   name.where,
                   near ? "did you mean '" + std::string(*near) + "'?"
                        : fmt::format("there are: {}; a set of your own is given as a file", fmt::join(known, ", ")),
                   {}});
  }
  return out;
}

const std::vector<std::vector<BoundRequirement>>& built_in_rules() {
  static const std::vector<std::vector<BoundRequirement>> all = [] {
    std::vector<std::vector<BoundRequirement>> out;
    for (const site::RuleSet& set : site::built_in_rule_sets()) {
      Parsed<std::vector<BoundRequirement>> bound = bind(set);
      if (!bound.ok()) {
        throw std::logic_error("rule set " + set.id.text + ": " + bound.diagnostics.front().message);
      }
      out.push_back(std::move(bound.value));
    }
    return out;
  }();
  return all;
}

}  // namespace forecourse::checks
