#include "forecourse/site/text/table_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "forecourse/base/nearest_word.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/site/shelf.h"

namespace forecourse::site {

namespace {

constexpr int site_file_version = 1;
constexpr std::size_t most_unknown_keys = 30;  // of one table; beyond, it is no table of ours

std::string spaced(std::string_view name) {
  std::string words(name);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

/// A loss as a text is b of a q + b q^2, or a when its unit says so.
bool is_linear_loss(const std::string& text) {
  return std::holds_alternative<double>(read_quantity(text, LinearLoss::kind()));
}

bool can_be(const Node& node, const QuantityKind& kind) {
  return node.kind == NodeKind::text && std::holds_alternative<double>(read_quantity(node.text, kind));
}

bool is_newer_format(const Node& node) { return node.kind == NodeKind::number && node.number > site_file_version; }

std::string_view first_example(const QuantityKind& kind) {
  const std::string_view examples = kind.examples;
  return examples.substr(0, examples.find(" or "));
}

void check_on_shelf(const ReadRun& run, std::string_view kind, const Name& name) {
  if (name.empty() || find_part(name.text, kind) != nullptr) return;
  const ShelfPart* other = find_part(name.text);
  const std::string what = spaced(kind);
  run.error(name.where,
            other != nullptr ? fmt::format("'{}' is a {} on the shelf, not a {}", name.text, spaced(other->kind), what)
                             : fmt::format("there is no {} '{}' on the shelf", what, name.text),
            offer(name.text, part_ids(kind), "the shelf has"));
}

}  // namespace

std::string TableReader::label() const {
  if (name_ == "site_file") return "a site file";
  const Entry* id = find_entry(table_, "id");
  if (id == nullptr || id->node.kind != NodeKind::text) return spaced(name_);
  return fmt::format("{} '{}'", spaced(name_), shortened(id->node.text));
}

const Entry* TableReader::find(std::string_view key, Need need) {
  known_.push_back(key);
  const Entry* entry = find_entry(table_, key);
  if (entry == nullptr && need == Need::required && run_.complete) missing_.push_back(key);
  return entry;
}

void TableReader::finish() {
  std::vector<std::string_view> misspelt;
  for (const Entry& entry : table_.entries) {
    if (std::find(known_.begin(), known_.end(), entry.key) != known_.end()) continue;
    const std::string scope = out_of_scope(entry.key);
    if (!scope.empty()) {
      run_.error(entry.key_where, scope, "describe only the liquid fuels with submersible pumps of this station");
    } else {
      if (misspelt.size() == most_unknown_keys) {
        run_.error(entry.key_where, fmt::format("more than {} keys of {} are not known", most_unknown_keys, label()),
                   "put these right first");
        break;
      }
      run_.error(entry.key_where, fmt::format("'{}' is not a key of {}", shortened(entry.key), label()),
                 offer(entry.key, known_, "its keys are"));
      misspelt.push_back(nearest_word(shortened(entry.key), std::span<const std::string_view>(known_)).value_or(""));
    }
  }
  for (const std::string_view key : missing_) {
    if (std::find(misspelt.begin(), misspelt.end(), key) != misspelt.end()) continue;
    run_.error(table_.where, fmt::format("{} has no '{}'", label(), key), fmt::format("add {} = ...", key));
  }
}

void TableReader::format(std::string_view key, std::string_view) {
  known_.push_back(key);
  const Entry* entry = find_entry(table_, key);
  if (entry == nullptr) {
    const SourceSpan start{table_.where.text, 0, 0};
    if (table_.entries.empty() && run_.complete) {
      run_.error(start, "the file describes nothing",
                 "begin with format = 1, then [site], [[product]], [[tank]], [[pump]], [[line]] and [[dispenser]]");
    } else if (run_.complete) {
      run_.error(start, "the file does not say its format", "write format = 1 in the first line");
    }
  } else if (entry->node.kind != NodeKind::number || entry->node.number != site_file_version) {
    run_.error(
        entry->node.where,
        fmt::format("format is {}, but this program reads format {}", run_.written(entry->node), site_file_version),
        is_newer_format(entry->node) ? "a newer version of this program reads it"
                                     : fmt::format("write format = {}", site_file_version));
  }
}

void TableReader::name(std::string_view key, Name& member, std::string_view) {
  if (const Entry* entry = find(key)) member = value_.name(key, entry->node).value_or(Name{});
}

void TableReader::id(std::string_view key, Name& member, IdRule rule, std::string_view) {
  if (const Entry* entry = find(key, Need::required)) member = value_.id(key, entry->node, rule).value_or(Name{});
}

void TableReader::optional_id(std::string_view key, Name& member, IdRule rule, std::string_view) {
  if (const Entry* entry = find(key)) member = value_.id(key, entry->node, rule).value_or(Name{});
}

void TableReader::clock(std::string_view key, Name& member, std::string_view) {
  if (const Entry* entry = find(key)) member = value_.clock(key, entry->node).value_or(Name{});
}

void TableReader::number(std::string_view key, Maybe<double>& member, std::string_view, const Range& range) {
  if (const Entry* entry = find(key)) member = value_.number(key, entry->node, range);
}

void TableReader::fact(std::string_view key, Fact& member, std::string_view) {
  if (const Entry* entry = find(key)) member = value_.fact(key, entry->node);
}

void TableReader::date(std::string_view key, std::optional<Date>& member, std::string_view) {
  if (const Entry* entry = find(key)) member = value_.date(key, entry->node);
}

void TableReader::reference(std::string_view key, Name& member, PartKind, std::string_view, Need need) {
  if (const Entry* entry = find(key, need)) member = value_.name(key, entry->node).value_or(Name{});
}

void TableReader::references(std::string_view key, std::vector<Name>& member, PartKind, std::string_view doc) {
  names(key, member, doc);
}

void TableReader::names(std::string_view key, std::vector<Name>& member, std::string_view) {
  if (const Entry* entry = find(key)) member = value_.names(key, entry->node);
}

void TableReader::name_sets(std::string_view key, std::vector<std::vector<Name>>& member, PartKind, std::string_view) {
  const Entry* entry = find(key);
  const auto* sets = entry == nullptr ? nullptr : value_.list(key, entry->node, "lists of ids");
  if (sets == nullptr) return;
  for (const Node& set : *sets) member.push_back(value_.names(fmt::format("a set of {}", key), set));
}

void TableReader::numbers(std::string_view key, std::vector<Entered<double>>& member, std::size_t count,
                          std::string_view) {
  const Entry* entry = find(key);
  const auto* items = entry == nullptr ? nullptr : value_.list(key, entry->node, "numbers");
  if (items == nullptr) return;
  for (const Node& item : *items) {
    if (const auto read = value_.number(key, item, not_negative)) member.push_back(*read);
  }
  if (items->size() != count) {
    run_.error(entry->node.where,
               fmt::format("{} is a list of {} numbers, but {} are written", key, count, items->size()));
  }
}

void TableReader::position(std::string_view key, std::optional<Position>& member, std::string_view) {
  const Entry* entry = find(key);
  const auto* items = entry == nullptr ? nullptr : value_.list(key, entry->node, "two lengths");
  if (items == nullptr) return;
  if (items->size() != 2) {
    run_.error(
        entry->node.where,
        fmt::format("{} is two lengths, but {} {} written", key, items->size(), items->size() == 1 ? "is" : "are"),
        "write [\"40 ft\", \"12 ft\"]");
    return;
  }
  const auto x = value_.plain_quantity(key, (*items)[0], kinds::Length::kind);
  const auto y = value_.plain_quantity(key, (*items)[1], kinds::Length::kind);
  if (x && y) member = Position{Length::from_si(*x), Length::from_si(*y), entry->node.where};
}

void TableReader::coefficients(std::string_view key, std::vector<Entered<double>>& member, std::string_view) {
  const Entry* entry = find(key);
  const auto* items = entry == nullptr ? nullptr : value_.list(key, entry->node, "coefficients");
  if (items == nullptr) return;
  for (std::size_t i = 0; i < items->size(); ++i) {
    const Node& item = (*items)[i];
    const auto read = value_.coefficient(fmt::format("coefficient {}", i), item, static_cast<int>(i));
    if (!read) {
      member.clear();
      return;
    }
    member.push_back({*read, *read, *read, item.where});
  }
}

void TableReader::loss_from_text(const Entry& entry, EnteredLoss& loss) {
  const bool linear = entry.node.kind == NodeKind::text && is_linear_loss(entry.node.text);
  if (linear) {
    loss.per_flow =
        entered<kinds::LinearLoss>(value_.quantity(entry.key, entry.node, kinds::LinearLoss::kind, not_negative));
  } else {
    loss.per_flow_squared =
        entered<kinds::SquareLoss>(value_.quantity(entry.key, entry.node, kinds::SquareLoss::kind, not_negative));
  }
}

void TableReader::loss(std::string_view key, std::optional<EnteredLoss>& member, std::string_view) {
  const Entry* entry = find(key);
  if (entry == nullptr) return;
  const Node& node = entry->node;
  const bool spread = is_spread(node);
  const Entry* likely = spread ? find_entry(node, "likely") : nullptr;
  const NodeKind kind = likely != nullptr ? likely->node.kind : node.kind;
  EnteredLoss loss;
  loss.where = node.where;
  if (kind == NodeKind::table && !spread) {
    read_into(node, member.emplace());
    return;
  }
  if (kind == NodeKind::number) {
    loss.k = value_.number(key, node, not_negative);
  } else if (kind == NodeKind::text) {
    loss_from_text(*entry, loss);
  } else {
    run_.error(node.where, fmt::format("{} is a pressure loss, but {} is {}", key, run_.written(node), noun_of(kind)),
               "write a loss coefficient as 3.6, a loss as \"0.17 psi/gpm^2\", or a table as { cv = 12 }");
  }
  if (loss.k || loss.per_flow || loss.per_flow_squared) member = loss;
}

void TableReader::pipe(std::string_view key, std::optional<Pipe>& member, std::string_view) {
  const Entry* entry = find(key);
  if (entry == nullptr) return;
  const Node& node = entry->node;
  if (node.kind == NodeKind::table && !is_spread(node)) return read_into(node, member.emplace());
  const auto length = entered<kinds::Length>(value_.quantity(key, node, kinds::Length::kind, not_negative));
  if (!length) return;
  member.emplace().where = node.where;
  member->length = length;
}

void TableReader::part(std::string_view key, std::optional<Part>& member, std::string_view) {
  const Entry* entry = find(key);
  if (entry == nullptr) return;
  const Node& node = entry->node;
  if (node.kind == NodeKind::table) {
    const std::size_t before = run_.diagnostics.size();
    read_into(node, member.emplace());
    if (member->loaded && key != "filter") {
      run_.error(member->loaded->where, fmt::format("'loaded' is said of a filter, not of a {}", spaced(key)),
                 "give its loss alone");
    }
    if (member->accuracy_class && key != "meter") {
      run_.error(member->accuracy_class->where,
                 fmt::format("'accuracy_class' is said of a meter, not of a {}", spaced(key)), "leave it out");
    }
    if (run_.diagnostics.size() == before && run_.complete && member->shelf.empty() && !member->loss) {
      run_.error(node.where, fmt::format("{} names no part of the shelf and has no loss", key),
                 fmt::format("write {0} = {{ loss = ... }}, or the id of a part on the shelf in quotes; a part that is "
                             "not listed does not exist",
                             key));
    }
    return check_on_shelf(run_, key, member->shelf);
  }
  if (node.kind == NodeKind::text) {
    member.emplace().where = node.where;
    member->shelf = value_.name(key, node).value_or(Name{});
    return check_on_shelf(run_, key, member->shelf);
  }
  run_.error(node.where, fmt::format("{} is a part, but {} is {}", key, run_.written(node), noun_of(node.kind)),
             "write the id of a part on the shelf in quotes, or its loss as { loss = ... }");
}

const Node* TableReader::one_table(const Entry& entry) const {
  if (entry.node.kind == NodeKind::table) return &entry.node;
  if (entry.node.kind == NodeKind::array && entry.has_header() && !entry.node.items.empty()) {
    run_.error(entry.key_where, fmt::format("{} is one table, not a list", entry.key),
               fmt::format("write [{}] once", entry.key));
    return &entry.node.items.front();
  }
  run_.error(entry.node.where,
             fmt::format("{} is a table, but {} is {}", entry.key, run_.written(entry.node), noun_of(entry.node.kind)),
             fmt::format("write {} = {{ ... }}, or a header that ends with {}", entry.key, entry.key));
  return nullptr;
}

std::vector<const Node*> TableReader::many_tables(const Entry& entry) const {
  if (entry.node.kind == NodeKind::table) {
    run_.error(entry.key_where, fmt::format("{} is a list of tables", entry.key),
               entry.has_header() ? fmt::format("write [[{}]] with two brackets for each", entry.key)
                                  : fmt::format("write {} = [{{ ... }}, ...]", entry.key));
    return {&entry.node};
  }
  std::vector<const Node*> tables;
  const auto* items = value_.list(entry.key, entry.node, "tables");
  if (items == nullptr) return tables;
  for (const Node& item : *items) {
    if (item.kind == NodeKind::table) {
      tables.push_back(&item);
    } else {
      run_.error(item.where, fmt::format("{} is a list of tables, but {} is {}", entry.key, run_.written(item),
                                         noun_of(item.kind)));
    }
  }
  return tables;
}

std::vector<std::pair<double, double>> TableReader::pairs(const Entry& entry, const QuantityKind& first,
                                                          const QuantityKind& second) const {
  std::vector<std::pair<double, double>> all;
  const auto* items = value_.list(entry.key, entry.node, "pairs");
  if (items == nullptr) return all;
  for (const Node& item : *items) {
    if (item.kind != NodeKind::array || item.items.size() != 2) {
      run_.error(item.where, fmt::format("{} is a list of pairs, but {} is no pair", entry.key, run_.written(item)),
                 fmt::format("write each as [{}, {}]", first_example(first), first_example(second)));
      continue;
    }
    if (can_be(item.items[0], second) && can_be(item.items[1], first)) {
      run_.error(item.where,
                 fmt::format("a pair of {} is {} and {}, but {} stands the other way round", entry.key, first.noun,
                             second.noun, run_.written(item)),
                 fmt::format("write [{}, {}]", run_.written(item.items[1]), run_.written(item.items[0])));
      continue;
    }
    const auto a = value_.plain_quantity(fmt::format("the first of a pair of {}", entry.key), item.items[0], first);
    const auto b = value_.plain_quantity(fmt::format("the second of a pair of {}", entry.key), item.items[1], second);
    if (a && b) all.emplace_back(*a, *b);
  }
  return all;
}

}  // namespace forecourse::site
