#include "forecourse/site/shelf.h"

#include <toml++/toml.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

#include "forecourse/base/unit_text.h"
#include "forecourse/site/shelf_text.h"

namespace forecourse::site {
namespace {

constexpr std::array statuses{ShelfStatus::published, ShelfStatus::common_practice, ShelfStatus::illustrative};

template <class T>
Entered<T> certain(T value) {
  return {value, value, value, {}};
}

/// One table of the shelf. Every key it should have is asked for; what is missing or odd is thrown.
class Entry {
 public:
  explicit Entry(const toml::table& table) : table_(table) { id_ = text("id"); }

  [[noreturn]] void fail(const std::string& what) const { throw std::logic_error("shelf entry '" + id_ + "' " + what); }

  [[nodiscard]] std::string text(std::string_view key) const {
    const auto value = table_[key].value<std::string>();
    if (!value || value->empty()) fail("has no " + std::string(key));
    return *value;
  }

  template <class Q>
  [[nodiscard]] [[nodiscard]] std::optional<Q> quantity(std::string_view key) const {
    if (!table_.contains(key)) return std::nullopt;
    const auto read = read_as<Q>(text(key));
    if (const auto* error = std::get_if<UnitTextError>(&read)) fail(std::string(key) + " " + error->message);
    return std::get<Q>(read);
  }

  [[nodiscard]] std::optional<double> number(std::string_view key) const { return table_[key].value<double>(); }

  [[nodiscard]] double meters(std::string_view key) const {
    const std::optional<Length> length = quantity<Length>(key);
    if (!length) fail("has no " + std::string(key));
    return length->si();
  }

  [[nodiscard]] std::optional<double> meters_if_any(std::string_view key) const {
    return table_.contains(key) ? std::optional(meters(key)) : std::nullopt;
  }

  [[nodiscard]] ShelfStatus status() const {
    const std::string written = text("status");
    const auto* const found =
        std::find_if(statuses.begin(), statuses.end(), [&](ShelfStatus s) { return word(s) == written; });
    if (found == statuses.end()) fail("has no status '" + written + "'");
    return *found;
  }

  [[nodiscard]] Entry table(std::string_view key) const {
    const toml::table* inner = table_[key].as_table();
    if (inner == nullptr) fail("has no " + std::string(key));
    return Entry(*inner, id_);
  }

 private:
  Entry(const toml::table& table, std::string id) : table_(table), id_(std::move(id)) {}

  const toml::table& table_;
  std::string id_;
};

ShelfPipe read_pipe(const Entry& entry) {
  return {entry.text("id"),          entry.text("construction"),
          entry.text("nominal"),     entry.meters_if_any("outside_diameter"),
          entry.meters("bore"),      entry.meters_if_any("wall"),
          entry.meters("roughness"), entry.status(),
          entry.text("source")};
}

ShelfPart read_part(const Entry& entry) {
  ShelfPart part{entry.text("id"), entry.text("kind"), {}, 0.0, "", entry.status(), entry.text("source")};
  const Entry loss = entry.table("loss");
  const std::optional<double> k = loss.number("k");
  const auto per_flow_squared = loss.quantity<SquareLoss>("per_flow_squared");
  if (k.has_value() == per_flow_squared.has_value()) entry.fail("needs one of k and per_flow_squared");
  if (k) {
    part.loss.k = certain(*k);
    if (const auto bore = loss.quantity<Length>("bore")) part.loss.bore = certain(*bore);
    part.figure = *k;
    return part;
  }
  part.loss.per_flow_squared = certain(*per_flow_squared);
  part.figure = per_flow_squared->si();
  part.unit = "Pa s2/m6";
  return part;
}

template <class T>
void read_entries(const toml::table& document, std::string_view key, T (*read)(const Entry&), std::vector<T>& entries) {
  const toml::array* tables = document[key].as_array();
  if (tables == nullptr) return;
  for (const toml::node& node : *tables) entries.push_back(read(Entry(*node.as_table())));
}

template <class T>
const T* find_by_id(const std::vector<T>& entries, std::string_view id) {
  const auto found = std::find_if(entries.begin(), entries.end(), [&](const T& entry) { return entry.id == id; });
  return found == entries.end() ? nullptr : &*found;
}

}  // namespace

const char* word(ShelfStatus status) {
  switch (status) {
    case ShelfStatus::published:
      return "published";
    case ShelfStatus::common_practice:
      return "common practice";
    case ShelfStatus::illustrative:
      return "illustrative";
  }
  return "illustrative";
}

Shelf read_shelf(const std::vector<std::string_view>& texts) {
  Shelf shelf;
  for (const std::string_view text : texts) {
    try {
      const toml::table document = toml::parse(text);
      read_entries(document, "pipe", read_pipe, shelf.pipes);
      read_entries(document, "part", read_part, shelf.parts);
    } catch (const toml::parse_error& error) {
      throw std::logic_error("shelf: " + std::string(error.description()));
    }
  }
  return shelf;
}

const Shelf& shelf() {
  static const Shelf read = read_shelf({shelf_texts().begin(), shelf_texts().end()});
  return read;
}

const ShelfPipe* find_pipe(std::string_view id) { return find_by_id(shelf().pipes, id); }

const ShelfPart* find_part(std::string_view id) { return find_by_id(shelf().parts, id); }

const ShelfPart* find_part(std::string_view id, std::string_view kind) {
  const ShelfPart* part = find_part(id);
  return part != nullptr && part->kind == kind ? part : nullptr;
}

std::vector<std::string_view> pipe_ids() {
  std::vector<std::string_view> ids;
  for (const ShelfPipe& pipe : shelf().pipes) ids.push_back(pipe.id);
  return ids;
}

std::vector<std::string_view> part_ids(std::string_view kind) {
  std::vector<std::string_view> ids;
  for (const ShelfPart& part : shelf().parts) {
    if (kind.empty() || part.kind == kind) ids.push_back(part.id);
  }
  return ids;
}

}  // namespace forecourse::site
