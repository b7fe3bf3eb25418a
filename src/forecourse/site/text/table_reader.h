#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "forecourse/site/fields/fields_site.h"
#include "forecourse/site/text/value_reader.h"
#include "forecourse/site/text/ways.h"

namespace forecourse::site {

/// Visitor of the descriptions in fields/ that fills a struct from one table of a text.
class TableReader {
 public:
  TableReader(const Node& table, const ReadRun& run) : table_(table), run_(run), value_(run) {}

  [[nodiscard]] SourceSpan here() const { return table_.where; }
  void about(std::string_view name, std::string_view) { name_ = name; }
  /// Tells of every key that no description asked for, and of the required ones that are not there.
  void finish();

  void format(std::string_view key, std::string_view doc);
  void name(std::string_view key, Name& member, std::string_view doc);
  void id(std::string_view key, Name& member, IdRule rule, std::string_view doc);
  void optional_id(std::string_view key, Name& member, IdRule rule, std::string_view doc);
  void clock(std::string_view key, Name& member, std::string_view doc);
  void number(std::string_view key, Maybe<double>& member, std::string_view doc, const Range& range = any_value);
  void fact(std::string_view key, Fact& member, std::string_view doc);
  void date(std::string_view key, std::optional<Date>& member, std::string_view doc);
  void reference(std::string_view key, Name& member, PartKind, std::string_view doc, Need need = Need::optional);
  void references(std::string_view key, std::vector<Name>& member, PartKind, std::string_view doc);
  void names(std::string_view key, std::vector<Name>& member, std::string_view doc);
  void name_sets(std::string_view key, std::vector<std::vector<Name>>& member, PartKind, std::string_view doc);
  void numbers(std::string_view key, std::vector<Entered<double>>& member, std::size_t count, std::string_view doc);
  void position(std::string_view key, std::optional<Position>& member, std::string_view doc);
  void coefficients(std::string_view key, std::vector<Entered<double>>& member, std::string_view doc);
  void loss(std::string_view key, std::optional<EnteredLoss>& member, std::string_view doc);
  void pipe(std::string_view key, std::optional<Pipe>& member, std::string_view doc);
  void part(std::string_view key, std::optional<Part>& member, std::string_view doc);

  void word(std::string_view key, Name& member, std::span<const std::string_view> words, std::string_view,
            Need need = Need::optional) {
    const Entry* entry = find(key, need);
    if (entry == nullptr) return;
    const auto index = value_.word(key, entry->node, {words.begin(), words.end()});
    if (index) member = Name{std::string(words[*index]), entry->node.where};
  }

  template <class E, std::size_t N>
  void choice(std::string_view key, std::optional<Chosen<E>>& member, const std::array<WordFor<E>, N>& words,
              std::string_view) {
    const Entry* entry = find(key);
    if (entry == nullptr) return;
    if (const auto index = chosen(*entry, words)) member = Chosen<E>{words[*index].value, entry->node.where};
  }

  template <class E, std::size_t N>
  void choice(std::string_view key, E& member, const std::array<WordFor<E>, N>& words, std::string_view) {
    const Entry* entry = find(key);
    if (entry == nullptr) return;
    if (const auto index = chosen(*entry, words)) member = words[*index].value;
  }

  template <class K>
  void quantity(std::string_view key, Maybe<Quantity<K>>& member, std::string_view, const Range& range = any_value) {
    if (const Entry* entry = find(key)) member = entered<K>(value_.quantity(key, entry->node, K::kind, range));
  }

  template <class K>
  void required_quantity(std::string_view key, Entered<Quantity<K>>& member, std::string_view, const Range& range) {
    const Entry* entry = find(key, Need::required);
    if (entry == nullptr) return;
    if (const auto read = entered<K>(value_.quantity(key, entry->node, K::kind, range))) member = *read;
  }

  template <class P, class A, class B>
  void points(std::string_view key, std::vector<P>& member, Quantity<A> P::*first, Quantity<B> P::*second,
              std::string_view) {
    const Entry* entry = find(key);
    if (entry == nullptr) return;
    for (const auto& [a, b] : pairs(*entry, A::kind, B::kind)) {
      P point{};
      point.*first = Quantity<A>::from_si(a);
      point.*second = Quantity<B>::from_si(b);
      member.push_back(point);
    }
  }

  template <class T>
  void table(std::string_view key, std::optional<T>& member, std::string_view) {
    const Entry* entry = find(key);
    if (entry == nullptr) return;
    if (const Node* node = one_table(*entry)) read_into(*node, member.emplace());
  }

  template <class T>
  void section(std::string_view key, T& member, std::string_view) {
    const Entry* entry = find(key);
    if (entry == nullptr) return;
    if (const Node* node = one_table(*entry)) read_into(*node, member);
  }

  template <class T>
  void list(std::string_view key, std::vector<T>& member, std::string_view) {
    const Entry* entry = find(key);
    if (entry == nullptr) return;
    for (const Node* node : many_tables(*entry)) read_into(*node, member.emplace_back());
  }

 private:
  template <class T>
  void read_into(const Node& node, T& value) {
    TableReader reader(node, run_);
    if constexpr (requires { value.where; }) value.where = node.where;
    const std::size_t before = run_.diagnostics.size();
    fields(reader, value);
    reader.finish();
    const bool whole = run_.diagnostics.size() == before;
    if (!whole) run_.half_read.push_back(node.where);
    check_table(ReadRun{run_.text, run_.diagnostics, run_.half_read, run_.uncertain, run_.complete && whole}, value);
  }

  template <class K>
  static Maybe<Quantity<K>> entered(const std::optional<Entered<double>>& read) {
    using Q = Quantity<K>;
    if (!read) return std::nullopt;
    return Entered<Q>{Q::from_si(read->likely), Q::from_si(read->low), Q::from_si(read->high), read->where};
  }

  template <class E, std::size_t N>
  std::optional<std::size_t> chosen(const Entry& entry, const std::array<WordFor<E>, N>& words) {
    std::vector<std::string_view> known;
    known.reserve(N);
    for (const auto& word : words) known.push_back(word.word);
    return value_.word(entry.key, entry.node, known);
  }

  const Entry* find(std::string_view key, Need need = Need::optional);
  [[nodiscard]] const Node* one_table(const Entry& entry) const;
  [[nodiscard]] std::vector<const Node*> many_tables(const Entry& entry) const;
  [[nodiscard]] std::vector<std::pair<double, double>> pairs(const Entry& entry, const QuantityKind& first,
                                                             const QuantityKind& second) const;
  void loss_from_text(const Entry& entry, EnteredLoss& loss);
  /// "line 'trunk'", for messages.
  [[nodiscard]] std::string label() const;

  const Node& table_;
  const ReadRun& run_;
  ValueReader value_;
  std::vector<std::string_view> missing_;  ///< required keys that are not there
  std::string_view name_;
  std::vector<std::string_view> known_;
};

}  // namespace forecourse::site
