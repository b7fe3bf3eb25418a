#include <fmt/format.h>

#include <set>

#include "forecourse/site/describing/value_words.h"
#include "forecourse/site/fields/fields_site.h"
#include "forecourse/site/schema.h"

namespace forecourse::site {

namespace {

constexpr std::string_view introduction = R"(# The site file

Every table and key of a site file, generated from the program. Each value that has a dimension is a text with its
unit (`"220 ft"`, `"31 psi"`); US customary and SI units may be mixed. An uncertain value is written
`{ low = "40 s", likely = "60 s", high = "180 s" }`. A part that is not listed does not exist and adds nothing. Facts
(true or false, dates) have no default: what is not stated stays unknown.
)";

std::string spaced(std::string_view name) {
  std::string words(name);
  for (char& c : words) {
    if (c == '_') c = ' ';
  }
  return words;
}

std::string anchor(std::string_view name) {
  std::string words = spaced(name);
  for (char& c : words) {
    if (c == ' ') c = '-';
  }
  return words;
}

/// The sections of the page, each table once, in the order they are met.
class Page {
 public:
  std::size_t open(const std::string& name) {
    met_.insert(name);
    sections_.emplace_back();
    return sections_.size() - 1;
  }
  [[nodiscard]] bool has(const std::string& name) const { return met_.count(name) != 0; }
  std::string& section(std::size_t i) { return sections_[i]; }
  [[nodiscard]] std::string text() const {
    std::string all(introduction);
    for (const std::string& section : sections_) all += section;
    return all;
  }

 private:
  std::set<std::string> met_;
  std::vector<std::string> sections_;
};

/// Visitor of the descriptions in fields/ that writes one section of the page.
class ReferenceWriter {
 public:
  ReferenceWriter(Page& page, bool only_name) : page_(page), only_name_(only_name) {}

  [[nodiscard]] static SourceSpan here() { return {}; }
  [[nodiscard]] const std::string& table_name() const { return name_; }

  void about(std::string_view name, std::string_view doc) {
    name_ = name;
    if (only_name_) return;
    section_ = page_.open(name_);
    page_.section(section_) =
        fmt::format("\n## {}\n\n{}\n\n| key | value | what |\n|---|---|---|\n", spaced(name), doc);
  }
  void format(std::string_view key, std::string_view doc) { row(key, "1, required", doc); }
  void name(std::string_view key, Name&, std::string_view doc) { row(key, "text", doc); }
  void id(std::string_view key, Name&, IdRule, std::string_view doc) { row(key, "id, required", doc); }
  void optional_id(std::string_view key, Name&, IdRule, std::string_view doc) { row(key, "id", doc); }
  void clock(std::string_view key, Name&, std::string_view doc) { row(key, "time of day", doc); }
  void number(std::string_view key, Maybe<double>&, std::string_view doc, const Range& range = any_value) {
    row(key, range.words[0] == '\0' ? "number" : fmt::format("number, {}", range.words), doc);
  }
  void fact(std::string_view key, Fact&, std::string_view doc) { row(key, "true or false", doc); }
  void date(std::string_view key, std::optional<Date>&, std::string_view doc) { row(key, "date", doc); }
  void reference(std::string_view key, Name&, PartKind kind, std::string_view doc, Need need = Need::optional) {
    row(key, fmt::format("id of a {}{}", reference_word(kind), need == Need::required ? ", required" : ""), doc);
  }
  void references(std::string_view key, std::vector<Name>&, PartKind kind, std::string_view doc) {
    row(key, fmt::format("list of ids of a {}", reference_word(kind)), doc);
  }
  void names(std::string_view key, std::vector<Name>&, std::string_view doc) { row(key, "list of texts", doc); }
  void name_sets(std::string_view key, std::vector<std::vector<Name>>&, PartKind, std::string_view doc) {
    row(key, "list of lists of ids", doc);
  }
  void numbers(std::string_view key, std::vector<Entered<double>>&, std::size_t count, std::string_view doc) {
    row(key, fmt::format("list of {} numbers", count), doc);
  }
  void position(std::string_view key, std::optional<Position>&, std::string_view doc) {
    row(key, "two lengths: `[\"40 ft\", \"12 ft\"]`", doc);
  }
  void coefficients(std::string_view key, std::vector<Entered<double>>&, std::string_view doc) {
    row(key, "list of texts", doc);
  }
  void loss(std::string_view key, std::optional<EnteredLoss>&, std::string_view doc) {
    EnteredLoss empty;
    row(key, "number, text or " + linked(empty), doc);
  }
  void pipe(std::string_view key, std::optional<Pipe>&, std::string_view doc) {
    Pipe empty;
    row(key, "length or " + linked(empty), doc);
  }
  void part(std::string_view key, std::optional<Part>&, std::string_view doc) {
    Part empty;
    row(key, "id on the shelf or " + linked(empty), doc);
  }
  void word(std::string_view key, Name&, std::span<const std::string_view> words, std::string_view doc,
            Need need = Need::optional) {
    row(key, fmt::format("`{}`{}", fmt::join(words, "`, `"), need == Need::required ? "; required" : ""), doc);
  }
  template <class Member, class E, std::size_t N>
  void choice(std::string_view key, Member&, const std::array<WordFor<E>, N>& words, std::string_view doc) {
    std::vector<std::string_view> list;
    list.reserve(N);
    for (const auto& word : words) list.push_back(word.word);
    row(key, fmt::format("`{}`", fmt::join(list, "`, `")), doc);
  }
  template <class K>
  void quantity(std::string_view key, Maybe<Quantity<K>>&, std::string_view doc, const Range& range = any_value) {
    row(key, describe_kind(K::kind, range), doc);
  }
  template <class K>
  void required_quantity(std::string_view key, Entered<Quantity<K>>&, std::string_view doc, const Range& range) {
    row(key, describe_kind(K::kind, range) + "; required", doc);
  }
  template <class P, class A, class B>
  void points(std::string_view key, std::vector<P>&, Quantity<A> P::*, Quantity<B> P::*, std::string_view doc) {
    row(key, fmt::format("list of pairs: {}, {}", describe_kind(A::kind, {}), describe_kind(B::kind, {})), doc);
  }
  template <class T>
  void table(std::string_view key, std::optional<T>&, std::string_view doc) {
    T empty{};
    row(key, linked(empty), doc);
  }
  template <class T>
  void section(std::string_view key, T& member, std::string_view doc) {
    row(key, linked(member), doc);
  }
  template <class T>
  void list(std::string_view key, std::vector<T>&, std::string_view doc) {
    T empty{};
    row(key, "list of " + linked(empty), doc);
  }

 private:
  void row(std::string_view key, std::string_view value, std::string_view doc) {
    if (!only_name_) page_.section(section_) += fmt::format("| `{}` | {} | {} |\n", key, value, doc);
  }

  /// A link to the section of a table, which is written when it is met for the first time.
  template <class T>
  std::string linked(T& value) {
    if (only_name_) return {};
    ReferenceWriter namer(page_, true);
    fields(namer, value);
    const std::string name = namer.table_name();
    if (!page_.has(name)) {
      ReferenceWriter writer(page_, false);
      fields(writer, value);
    }
    return fmt::format("[{}](#{})", spaced(name), anchor(name));
  }

  Page& page_;
  bool only_name_;
  std::string name_;
  std::size_t section_ = 0;
};

}  // namespace

std::string site_reference() {
  Page page;
  ReferenceWriter writer(page, false);
  Site empty;
  fields(writer, empty);
  return page.text();
}

}  // namespace forecourse::site
