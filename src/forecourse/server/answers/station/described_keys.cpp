#include "forecourse/server/answers/station/described_keys.h"

#include <algorithm>

#include "forecourse/site/describing/value_words.h"
#include "forecourse/site/fields/fields_site.h"

namespace forecourse::server {
namespace {

using namespace site;  // what the descriptions are made of

template <class T>
const DescribedTable& table_of();

/// Visitor of the descriptions in site/fields that keeps what a form needs of one table.
class KeyDescriber {
 public:
  DescribedTable out;

  [[nodiscard]] static SourceSpan here() { return {}; }
  void about(std::string_view name, std::string_view doc) {
    out.name = name;
    out.help = doc;
  }
  void format(std::string_view key, std::string_view doc) { add(key, "number", doc).required = true; }
  void name(std::string_view key, Name&, std::string_view doc) { add(key, "text", doc); }
  void id(std::string_view key, Name&, IdRule, std::string_view doc) { add(key, "id", doc).required = true; }
  void optional_id(std::string_view key, Name&, IdRule, std::string_view doc) { add(key, "id", doc); }
  void clock(std::string_view key, Name&, std::string_view doc) { add(key, "clock", doc); }
  void number(std::string_view key, Maybe<double>&, std::string_view doc, const Range& = any_value) {
    add(key, "number", doc);
  }
  void fact(std::string_view key, Fact&, std::string_view doc) { add(key, "flag", doc); }
  void date(std::string_view key, std::optional<Date>&, std::string_view doc) { add(key, "date", doc); }
  void reference(std::string_view key, Name&, PartKind kind, std::string_view doc, Need need = Need::optional) {
    DescribedKey& added = add(key, "reference", doc);
    added.names = kind;
    added.required = need == Need::required;
  }
  void references(std::string_view key, std::vector<Name>&, PartKind kind, std::string_view doc) {
    add(key, "list", doc).names = kind;
  }
  void names(std::string_view key, std::vector<Name>&, std::string_view doc) { add(key, "list", doc); }
  void name_sets(std::string_view key, std::vector<std::vector<Name>>&, PartKind kind, std::string_view doc) {
    add(key, "list", doc).names = kind;
  }
  void numbers(std::string_view key, std::vector<Entered<double>>&, std::size_t, std::string_view doc) {
    add(key, "list", doc);
  }
  void position(std::string_view key, std::optional<Position>&, std::string_view doc) { add(key, "position", doc); }
  void coefficients(std::string_view key, std::vector<Entered<double>>&, std::string_view doc) {
    add(key, "list", doc);
  }
  void loss(std::string_view key, std::optional<EnteredLoss>&, std::string_view doc) {
    below<EnteredLoss>(key, KeyForm::loss, "loss", doc);
  }
  void pipe(std::string_view key, std::optional<Pipe>&, std::string_view doc) {
    below<Pipe>(key, KeyForm::pipe, "pipe", doc);
  }
  void part(std::string_view key, std::optional<Part>&, std::string_view doc) {
    below<Part>(key, KeyForm::part, "part", doc);
  }
  void word(std::string_view key, Name&, std::span<const std::string_view> words, std::string_view doc,
            Need need = Need::optional) {
    DescribedKey& added = add(key, "choice", doc);
    added.choices.assign(words.begin(), words.end());
    added.required = need == Need::required;
  }
  template <class Member, class E, std::size_t N>
  void choice(std::string_view key, Member&, const std::array<WordFor<E>, N>& words, std::string_view doc) {
    DescribedKey& added = add(key, "choice", doc);
    for (const auto& word : words) added.choices.emplace_back(word.word);
  }
  template <class K>
  void quantity(std::string_view key, Maybe<Quantity<K>>&, std::string_view doc, const Range& = any_value) {
    add(key, kind_name(K::kind), doc).quantity = &K::kind;
  }
  template <class K>
  void required_quantity(std::string_view key, Entered<Quantity<K>>&, std::string_view doc, const Range&) {
    DescribedKey& added = add(key, kind_name(K::kind), doc);
    added.quantity = &K::kind;
    added.required = true;
  }
  template <class P, class A, class B>
  void points(std::string_view key, std::vector<P>&, Quantity<A> P::*, Quantity<B> P::*, std::string_view doc) {
    add(key, "list", doc);
  }
  template <class T>
  void table(std::string_view key, std::optional<T>&, std::string_view doc) {
    below<T>(key, KeyForm::table, "table", doc);
  }
  template <class T>
  void section(std::string_view key, T&, std::string_view doc) {
    below<T>(key, KeyForm::table, "table", doc);
  }
  template <class T>
  void list(std::string_view key, std::vector<T>&, std::string_view doc) {
    below<T>(key, KeyForm::list, "list", doc);
  }

 private:
  DescribedKey& add(std::string_view key, std::string kind, std::string_view doc) {
    DescribedKey& added = out.keys.emplace_back();
    added.key = key;
    added.kind = std::move(kind);
    added.help = doc;
    return added;
  }
  template <class T>
  void below(std::string_view key, KeyForm form, const char* kind, std::string_view doc) {
    DescribedKey& added = add(key, kind, doc);
    added.form = form;
    added.below = &table_of<T>();
  }
};

/// What must be there stands first.
DescribedTable finished(DescribedTable table) {
  for (DescribedKey& key : table.keys) key.in = table.name;
  std::stable_partition(table.keys.begin(), table.keys.end(), [](const DescribedKey& key) { return key.required; });
  return table;
}

template <class T>
DescribedTable described() {
  KeyDescriber describer;
  T empty{};
  fields(describer, empty);
  return finished(std::move(describer.out));
}

/// `[site]` refers to a station instead of holding one.
template <>
DescribedTable described<SiteTable>() {
  KeyDescriber describer;
  Site empty;
  SiteTable table{empty};
  fields(describer, table);
  return finished(std::move(describer.out));
}

template <class T>
const DescribedTable& table_of() {
  static const DescribedTable table = described<T>();
  return table;
}

void collect(const DescribedTable& table, std::vector<const DescribedTable*>& out) {
  for (const DescribedKey& key : table.keys) {
    if (key.below == nullptr || std::find(out.begin(), out.end(), key.below) != out.end()) continue;
    out.push_back(key.below);
    collect(*key.below, out);
  }
}

}  // namespace

const DescribedKey* DescribedTable::find(std::string_view key) const {
  const auto found = std::find_if(keys.begin(), keys.end(), [&](const DescribedKey& one) { return one.key == key; });
  return found == keys.end() ? nullptr : &*found;
}

const DescribedTable& described_site_file() { return table_of<Site>(); }

std::vector<const DescribedTable*> described_tables() {
  std::vector<const DescribedTable*> out;
  collect(described_site_file(), out);
  return out;
}

}  // namespace forecourse::server
