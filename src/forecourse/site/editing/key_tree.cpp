#include "forecourse/site/editing/key_tree.h"

#include "forecourse/site/fields/fields_site.h"

namespace forecourse::site {

namespace {

template <class T>
std::vector<KnownKey> keys_of();

/// Visitor of the descriptions in fields/ that collects the keys of one table.
class KeyCollector {
 public:
  std::vector<KnownKey> keys;

  [[nodiscard]] static SourceSpan here() { return {}; }
  void about(std::string_view, std::string_view) {}
  void format(std::string_view key, std::string_view) { value(key); }
  void name(std::string_view key, Name&, std::string_view) { value(key); }
  void id(std::string_view key, Name&, IdRule, std::string_view) { value(key); }
  void optional_id(std::string_view key, Name&, IdRule, std::string_view) { value(key); }
  void clock(std::string_view key, Name&, std::string_view) { value(key); }
  void number(std::string_view key, Maybe<double>&, std::string_view, const Range& = any_value) { value(key); }
  void fact(std::string_view key, Fact&, std::string_view) { value(key); }
  void date(std::string_view key, std::optional<Date>&, std::string_view) { value(key); }
  void reference(std::string_view key, Name&, PartKind, std::string_view, Need = Need::optional) { value(key); }
  void references(std::string_view key, std::vector<Name>&, PartKind, std::string_view) { value(key); }
  void names(std::string_view key, std::vector<Name>&, std::string_view) { value(key); }
  void name_sets(std::string_view key, std::vector<std::vector<Name>>&, PartKind, std::string_view) { value(key); }
  void numbers(std::string_view key, std::vector<Entered<double>>&, std::size_t, std::string_view) { value(key); }
  void position(std::string_view key, std::optional<Position>&, std::string_view) { value(key); }
  void coefficients(std::string_view key, std::vector<Entered<double>>&, std::string_view) { value(key); }
  void loss(std::string_view key, std::optional<EnteredLoss>&, std::string_view) { below<EnteredLoss>(key); }
  void pipe(std::string_view key, std::optional<Pipe>&, std::string_view) { below<Pipe>(key); }
  void part(std::string_view key, std::optional<Part>&, std::string_view) { below<Part>(key); }
  void word(std::string_view key, Name&, std::span<const std::string_view>, std::string_view, Need = Need::optional) {
    value(key);
  }
  template <class Member, class E, std::size_t N>
  void choice(std::string_view key, Member&, const std::array<WordFor<E>, N>&, std::string_view) {
    value(key);
  }
  template <class K>
  void quantity(std::string_view key, Maybe<Quantity<K>>&, std::string_view, const Range& = any_value) {
    value(key);
  }
  template <class K>
  void required_quantity(std::string_view key, Entered<Quantity<K>>&, std::string_view, const Range&) {
    value(key);
  }
  template <class P, class A, class B>
  void points(std::string_view key, std::vector<P>&, Quantity<A> P::*, Quantity<B> P::*, std::string_view) {
    value(key);
  }
  template <class T>
  void table(std::string_view key, std::optional<T>&, std::string_view) {
    below<T>(key);
  }
  template <class T>
  void section(std::string_view key, T&, std::string_view) {
    below<T>(key);
  }
  template <class T>
  void list(std::string_view key, std::vector<T>&, std::string_view) {
    keys.push_back({key, true, &keys_of<T>});
  }

 private:
  void value(std::string_view key) { keys.push_back({key}); }
  template <class T>
  void below(std::string_view key) {
    keys.push_back({key, false, &keys_of<T>});
  }
};

template <class T>
std::vector<KnownKey> keys_of() {
  KeyCollector collector;
  T empty{};
  fields(collector, empty);
  return collector.keys;
}

/// `[site]` refers to a station instead of holding one.
template <>
std::vector<KnownKey> keys_of<SiteTable>() {
  KeyCollector collector;
  Site empty;
  SiteTable table{empty};
  fields(collector, table);
  return collector.keys;
}

}  // namespace

std::vector<KnownKey> keys_of_site_file() { return keys_of<Site>(); }

}  // namespace forecourse::site
