#include "forecourse/store/records/columns.h"

namespace forecourse::store {
namespace {

/// Visitor of the descriptions that lists the columns.
class ColumnLister {
 public:
  explicit ColumnLister(Kind& kind) : kind_(kind) {}

  void kind(std::string_view name, std::string_view noun, std::string_view doc) {
    kind_.name = name;
    kind_.noun = noun;
    kind_.doc = doc;
  }
  void moment(std::string_view prefix, records::Moment&, Need need) {
    const bool step = !prefix.empty();
    Column day{step ? "step_day" : "day", step ? "day of the step" : "local day", ColumnType::day, need, true};
    Column time{step ? "step_time" : "time", "local time of day", ColumnType::time, Need::optional, true};
    kind_.columns.push_back(std::move(day));
    kind_.columns.push_back(std::move(time));
  }
  void name(std::string_view name, site::Name&, std::string_view doc, const About& about) {
    add(name, doc, ColumnType::name, about);
  }
  template <std::size_t N>
  void word(std::string_view name, site::Name&, const std::array<std::string_view, N>& words, std::string_view doc,
            const About& about) {
    add(name, doc, ColumnType::word, about).words.assign(words.begin(), words.end());
  }
  template <class E, std::size_t N>
  void choice(std::string_view name, E&, const std::array<site::WordFor<E>, N>& words, std::string_view doc,
              const About& about) {
    Column& column = add(name, doc, ColumnType::word, about);
    for (const auto& word : words) column.words.push_back(word.word);
  }
  void fact(std::string_view name, site::Fact&, std::string_view doc) { add(name, doc, ColumnType::fact, plain); }
  template <class K>
  void quantity(std::string_view name, std::optional<Quantity<K>>&, std::string_view doc, const Range& range,
                std::string_view outside) {
    Column& column = add(name, doc, ColumnType::quantity, plain);
    column.quantity = &K::kind;
    column.range = range;
    column.outside = outside;
  }
  void one_of(std::initializer_list<std::string_view> names) {
    std::vector<std::size_t>& set = kind_.one_of.emplace_back();
    for (const std::string_view name : names) set.push_back(kind_.find(name).value());
  }

 private:
  Column& add(std::string_view name, std::string_view doc, ColumnType type, const About& about) {
    kind_.columns.push_back({name, doc, type, about.need, about.key, about.name_of});
    return kind_.columns.back();
  }

  Kind& kind_;
};

std::vector<Kind> list_kinds() {
  std::vector<Kind> all;
  records::Records none;
  each_kind(none, [&]<class Row>(auto&) {
    ColumnLister lister(all.emplace_back());
    Row row;
    columns(lister, row);
  });
  return all;
}

}  // namespace

std::optional<std::size_t> Kind::find(std::string_view column) const {
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (columns[i].name == column) return i;
  }
  return std::nullopt;
}

const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all = list_kinds();
  return all;
}

const Kind* find_kind(std::string_view name) {
  for (const Kind& kind : kinds()) {
    if (kind.name == name) return &kind;
  }
  return nullptr;
}

std::vector<std::string_view> kind_names() {
  std::vector<std::string_view> names;
  for (const Kind& kind : kinds()) names.push_back(kind.name);
  return names;
}

std::vector<std::string_view> column_names(const Kind& kind) {
  std::vector<std::string_view> names;
  for (const Column& column : kind.columns) names.push_back(column.name);
  return names;
}

}  // namespace forecourse::store
