#include "forecourse/site/schema.h"

#include <nlohmann/json.hpp>

#include "forecourse/site/describing/value_words.h"
#include "forecourse/site/fields/fields_site.h"

namespace forecourse::site {

namespace {

using Json = nlohmann::ordered_json;

Json reference_to(const std::string& definition) { return {{"$ref", "#/$defs/" + definition}}; }

Json documented(Json schema, std::string_view doc) {
  schema["description"] = doc;
  return schema;
}

Json list_of(Json item) { return {{"type", "array"}, {"items", std::move(item)}}; }

Json any_of(std::vector<Json> choices) { return {{"anyOf", choices}}; }

Json words_schema(const std::vector<std::string_view>& words) {
  Json list = Json::array();
  for (const std::string_view word : words) list.push_back(word);
  return {{"enum", std::move(list)}};
}

/// `{ low, likely, high }` of a value.
Json spread_of(const Json& value) {
  return {{"type", "object"},
          {"properties", {{"low", value}, {"likely", value}, {"high", value}}},
          {"required", {"low", "likely", "high"}},
          {"additionalProperties", false}};
}

/// Visitor of the descriptions in fields/ that writes the schema of one table; tables in it become definitions.
class SchemaWriter {
 public:
  explicit SchemaWriter(Json& definitions) : definitions_(definitions) {}

  [[nodiscard]] static SourceSpan here() { return {}; }
  [[nodiscard]] const std::string& table_name() const { return name_; }

  [[nodiscard]] Json schema() const {
    Json schema{
        {"type", "object"}, {"description", doc_}, {"properties", properties_}, {"additionalProperties", false}};
    if (!required_.empty()) schema["required"] = required_;
    return schema;
  }

  void about(std::string_view name, std::string_view doc) {
    name_ = name;
    doc_ = doc;
  }
  void format(std::string_view key, std::string_view doc) { add(key, {{"const", 1}}, doc, Need::required); }
  void name(std::string_view key, Name&, std::string_view doc) { add(key, text(), doc); }
  void id(std::string_view key, Name&, IdRule rule, std::string_view doc) {
    add(key, id_schema(rule), doc, Need::required);
  }
  void optional_id(std::string_view key, Name&, IdRule rule, std::string_view doc) { add(key, id_schema(rule), doc); }
  void clock(std::string_view key, Name&, std::string_view doc) {
    add(key, {{"type", "string"}, {"pattern", "^([01][0-9]|2[0-3]):[0-5][0-9]$|^24:00$"}}, doc);
  }
  void number(std::string_view key, Maybe<double>&, std::string_view doc, const Range& range = any_value) {
    add(key, number_schema(range), doc);
  }
  void fact(std::string_view key, Fact&, std::string_view doc) { add(key, {{"type", "boolean"}}, doc); }
  void date(std::string_view key, std::optional<Date>&, std::string_view doc) {
    add(key, {{"type", "string"}, {"format", "date"}}, doc);
  }
  void reference(std::string_view key, Name&, PartKind kind, std::string_view doc, Need need = Need::optional) {
    add(key, mention(kind), doc, need);
  }
  void references(std::string_view key, std::vector<Name>&, PartKind kind, std::string_view doc) {
    add(key, list_of(mention(kind)), doc);
  }
  void names(std::string_view key, std::vector<Name>&, std::string_view doc) { add(key, list_of(text()), doc); }
  void name_sets(std::string_view key, std::vector<std::vector<Name>>&, PartKind kind, std::string_view doc) {
    add(key, list_of(list_of(mention(kind))), doc);
  }
  void numbers(std::string_view key, std::vector<Entered<double>>&, std::size_t count, std::string_view doc) {
    Json list = list_of(number_schema(not_negative));
    list["minItems"] = count;
    list["maxItems"] = count;
    add(key, std::move(list), doc);
  }
  void position(std::string_view key, std::optional<Position>&, std::string_view doc) {
    add(key, pair_of(plain(kinds::Length::kind), plain(kinds::Length::kind)), doc);
  }
  void coefficients(std::string_view key, std::vector<Entered<double>>&, std::string_view doc) {
    add(key, list_of(text()), doc);
  }
  void loss(std::string_view key, std::optional<EnteredLoss>&, std::string_view doc) {
    add(key, any_of({number_schema(not_negative), text(), definition_of<EnteredLoss>()}), doc);
  }
  void pipe(std::string_view key, std::optional<Pipe>&, std::string_view doc) {
    add(key, any_of({quantity_schema(kinds::Length::kind), definition_of<Pipe>()}), doc);
  }
  void part(std::string_view key, std::optional<Part>&, std::string_view doc) {
    add(key, any_of({text(), definition_of<Part>()}), doc);
  }
  void word(std::string_view key, Name&, std::span<const std::string_view> words, std::string_view doc,
            Need need = Need::optional) {
    add(key, words_schema({words.begin(), words.end()}), doc, need);
  }
  template <class Member, class E, std::size_t N>
  void choice(std::string_view key, Member&, const std::array<WordFor<E>, N>& words, std::string_view doc) {
    std::vector<std::string_view> list;
    list.reserve(N);
    for (const auto& word : words) list.push_back(word.word);
    add(key, words_schema(list), doc);
  }
  template <class K>
  void quantity(std::string_view key, Maybe<Quantity<K>>&, std::string_view doc, const Range& range = any_value) {
    add(key, ranged(quantity_schema(K::kind), range), doc);
  }
  template <class K>
  void required_quantity(std::string_view key, Entered<Quantity<K>>&, std::string_view doc, const Range& range) {
    add(key, ranged(quantity_schema(K::kind), range), doc, Need::required);
  }
  template <class P, class A, class B>
  void points(std::string_view key, std::vector<P>&, Quantity<A> P::*, Quantity<B> P::*, std::string_view doc) {
    add(key, list_of(pair_of(plain(A::kind), plain(B::kind))), doc);
  }
  template <class T>
  void table(std::string_view key, std::optional<T>&, std::string_view doc) {
    add(key, definition_of<T>(), doc);
  }
  template <class T>
  void section(std::string_view key, T& member, std::string_view doc) {
    add(key, definition_of(member), doc);
  }
  template <class T>
  void list(std::string_view key, std::vector<T>&, std::string_view doc) {
    add(key, list_of(definition_of<T>()), doc);
  }

 private:
  void add(std::string_view key, Json schema, std::string_view doc, Need need = Need::optional) {
    properties_[std::string(key)] = documented(std::move(schema), doc);
    if (need == Need::required) required_.push_back(key);
  }

  template <class T>
  Json definition_of() {
    T empty{};
    return definition_of(empty);
  }
  template <class T>
  Json definition_of(T& value) {
    SchemaWriter inner(definitions_);
    fields(inner, value);
    if (!definitions_.contains(inner.table_name())) definitions_[inner.table_name()] = inner.schema();
    return reference_to(inner.table_name());
  }

  static Json text() { return {{"type", "string"}, {"minLength", 1}}; }
  static Json id_schema(IdRule rule) {
    return {{"type", "string"}, {"pattern", rule == IdRule::dotted ? "^[A-Za-z0-9_.-]+$" : "^[A-Za-z0-9_-]+$"}};
  }
  static Json mention(PartKind kind) {
    Json schema = text();
    schema["x-id-of"] = reference_word(kind);
    return schema;
  }
  static Json pair_of(Json first, Json second) {
    return {
        {"type", "array"}, {"prefixItems", {std::move(first), std::move(second)}}, {"minItems", 2}, {"maxItems", 2}};
  }
  static Json ranged(Json schema, const Range& range) {
    if (range.words[0] != '\0') schema["x-range"] = range.words;
    return schema;
  }
  static Json number_schema(const Range& range) {
    Json value{{"type", "number"}};
    if (range.low > -no_limit) value[range.above_low ? "exclusiveMinimum" : "minimum"] = range.low;
    if (range.high < no_limit) value["maximum"] = range.high;
    return any_of({value, spread_of(value)});
  }

  /// One value with its unit, without a spread.
  Json plain(const QuantityKind& kind) {
    const std::string name = kind_name(kind) + "_value";
    if (!definitions_.contains(name)) definitions_[name] = plain_definition(kind);
    return reference_to(name);
  }
  static Json plain_definition(const QuantityKind& kind) {
    Json written{{"type", "string"}, {"pattern", "[0-9]"}};
    Json schema = &kind == &kinds::Ratio::kind ? any_of({Json{{"type", "number"}}, written}) : written;
    schema["description"] = std::string(kind.noun) + " with its unit: " + kind.examples;
    return schema;
  }
  Json quantity_schema(const QuantityKind& kind) {
    const std::string name = kind_name(kind) + "_quantity";
    if (!definitions_.contains(name)) {
      const Json value = plain(kind);
      Json schema = any_of({value, spread_of(value)});
      schema["description"] = std::string(kind.noun) + ", or { low, likely, high }";
      definitions_[name] = std::move(schema);
    }
    return reference_to(name);
  }

  Json& definitions_;
  std::string name_;
  std::string doc_;
  Json properties_ = Json::object();
  std::vector<std::string_view> required_;
};

}  // namespace

std::string site_schema() {
  Json definitions = Json::object();
  SchemaWriter writer(definitions);
  Site empty;
  fields(writer, empty);
  Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", "site file"}};
  const Json body = writer.schema();
  for (const auto& [key, value] : body.items()) schema[key] = value;
  schema["$defs"] = std::move(definitions);
  return schema.dump(2) + "\n";
}

}  // namespace forecourse::site
