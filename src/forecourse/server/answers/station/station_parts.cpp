#include "forecourse/server/answers/station/station_parts.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <variant>

#include "forecourse/base/unit_text.h"
#include "forecourse/server/answers/station/line_products.h"
#include "forecourse/site/editing/path.h"

namespace forecourse::server {
namespace {

using site::Entry;
using site::Node;
using site::NodeKind;

struct StopOf {
  std::string_view what;
  int stop;
};

/// Tables that are parts of their own, by the name of their description, and the stop of the course they stand at.
constexpr auto stops = std::to_array<StopOf>({{"delivery", 1},
                                              {"fill", 2},
                                              {"drop_tube", 2},
                                              {"spill_container", 2},
                                              {"overfill_valve", 2},
                                              {"tank", 3},
                                              {"pump", 4},
                                              {"leak_detector", 4},
                                              {"line", 5},
                                              {"branch", 5},
                                              {"sump", 6},
                                              {"sump_sensor", 6},
                                              {"inlet", 7},
                                              {"shear_valve", 7},
                                              {"dispenser", 8},
                                              {"hose", 9},
                                              {"vent", 11},
                                              {"vapor_return", 11}});

/// Parts that only lose pressure, by their key.
constexpr auto stops_of_losses = std::to_array<StopOf>(
    {{"filter", 8}, {"meter", 8}, {"control_valve", 8}, {"breakaway", 9}, {"swivel", 9}, {"nozzle", 10}});

template <std::size_t N>
int stop_in(const std::array<StopOf, N>& table, std::string_view what) {
  for (const StopOf& one : table) {
    if (one.what == what) return one.stop;
  }
  return 0;
}

/// The stop of what stands at a key; 0: it has none of its own.
int stop_of(const DescribedKey& key) {
  if (key.form == KeyForm::part) return stop_in(stops_of_losses, key.key);
  return key.below == nullptr || key.form == KeyForm::loss || key.form == KeyForm::pipe
             ? 0
             : stop_in(stops, key.below->name);
}

std::string text_at(const Node& table, std::string_view key) {
  const Entry* entry = site::find_entry(table, key);
  return entry != nullptr && entry->node.kind == NodeKind::text ? entry->node.text : std::string();
}

std::string joined(const std::string& before, std::string_view key) {
  return before.empty() ? std::string(key) : before + "." + std::string(key);
}

/// What paths call the items of a list: their names where they differ, else their numbers.
std::vector<std::string> names_of(const Node& list) {
  std::map<std::string, int> count;
  for (const Node& item : list.items) ++count[std::string(site::item_name(item))];
  std::vector<std::string> out;
  for (std::size_t i = 0; i < list.items.size(); ++i) {
    const std::string name(site::item_name(list.items[i]));
    out.push_back(!name.empty() && count[name] == 1 ? name : std::to_string(i + 1));
  }
  return out;
}

bool is_spread(const Node& node) { return node.kind == NodeKind::table && site::find_entry(node, "likely") != nullptr; }

/// Two lengths of a list [m].
std::optional<std::pair<double, double>> position_in(const Node& node) {
  if (node.items.size() != 2) return std::nullopt;
  std::array<double, 2> both{};
  for (std::size_t i = 0; i < 2; ++i) {
    const auto read = read_quantity(node.items[i].text, kinds::Length::kind);
    if (!std::holds_alternative<double>(read)) return std::nullopt;
    both[i] = std::get<double>(read);
  }
  return std::pair(both[0], both[1]);
}

ShownValue shown_node(const DescribedKey& key, const Node& node) {
  const QuantityKind* kind = key.form == KeyForm::loss   ? &kinds::SquareLoss::kind
                             : key.form == KeyForm::pipe ? &kinds::Length::kind
                                                         : key.quantity;
  if (kind == nullptr) return {};
  if (node.kind == NodeKind::text) return shown_value(node.text, *kind);
  if (node.kind == NodeKind::number && kind == &kinds::Ratio::kind) return shown_share(node.number);
  if (!is_spread(node)) return {};
  const ShownValue low = shown_value(text_at(node, "low"), *kind);
  ShownValue likely = shown_value(text_at(node, "likely"), *kind);
  const ShownValue high = shown_value(text_at(node, "high"), *kind);
  if (low.us.empty() || likely.us.empty() || high.us.empty()) return likely;
  return {likely.us + " (" + low.us + " to " + high.us + ")", likely.si + " (" + low.si + " to " + high.si + ")"};
}

/// Goes through the tables of a text beside their descriptions.
class PartWalk {
 public:
  explicit PartWalk(std::string_view text) : text_(text) {}

  std::vector<StationPart> parts;

  void root(const Node& root) {
    add_loose(root);
    for (const DescribedKey& key : described_site_file().keys) {
      const Entry* entry = site::find_entry(root, key.key);
      if (key.below == nullptr) continue;
      if (key.form == KeyForm::list) {
        if (entry != nullptr) items(key, *entry, key.key, {});
      } else if (entry != nullptr && entry->node.kind == NodeKind::table) {
        part(key, entry->node, key.key, {}, {});
      } else if (key.key == "site") {
        part(key, Node{}, key.key, {}, {});
      }
    }
  }

 private:
  /// What its owner passes on to a part.
  struct Owner {
    std::string path;
    std::string id;
    std::string product;
  };

  /// Values at the root itself: they stand with the station.
  void add_loose(const Node& root) {
    for (const DescribedKey& key : described_site_file().keys) {
      if (key.below == nullptr) loose_.push_back(field(key, site::find_entry(root, key.key), key.key, key.key));
    }
  }

  void items(const DescribedKey& key, const Entry& entry, const std::string& path, const Owner& owner) {
    if (!site::is_table_list(entry.node)) return;
    const std::vector<std::string> names = names_of(entry.node);
    for (std::size_t i = 0; i < names.size(); ++i) {
      part(key, entry.node.items[i], joined(path, names[i]), names[i], owner);
    }
  }

  static StationPart part_at(const DescribedKey& key, const Node& node, const std::string& path,
                             const std::string& owner) {
    StationPart out;
    out.path = path;
    out.kind = key.form == KeyForm::part ? key.key : key.below->name;
    out.stop = stop_of(key);
    out.of = owner;
    out.where = node.where;
    return out;
  }

  void part(const DescribedKey& key, const Node& node, const std::string& path, const std::string& name,
            const Owner& owner) {
    StationPart out = part_at(key, node, path, owner.path);
    out.product = text_at(node, "product");
    if (out.product.empty()) out.product = out.kind == "product" ? text_at(node, "id") : owner.product;
    out.id = id_of(node, out, name, owner);
    if (const Entry* at = site::find_entry(node, "position")) out.position = position_in(at->node);
    if (path == "site") out.fields = std::move(loose_);
    const std::size_t place = parts.size();
    parts.emplace_back();  // before the parts in it
    fields(*key.below, node, path, {}, out);
    parts[place] = std::move(out);
  }

  /// Its own, or that of what it belongs to.
  static std::string id_of(const Node& node, const StationPart& part, const std::string& name, const Owner& owner) {
    std::string id = text_at(node, "id");
    if (!id.empty()) return id;
    if (part.kind == "inlet") return joined(owner.id, name);
    return owner.id.empty() ? (name.empty() ? part.path : name) : owner.id;
  }

  /// \param path of the table, \param below its key under the part
  void fields(const DescribedTable& table, const Node& node, const std::string& path, const std::string& below,
              StationPart& part) {
    for (const DescribedKey& key : table.keys) {
      value(key, site::find_entry(node, key.key), joined(path, key.key), joined(below, key.key), part);
    }
    for (const Entry& entry : node.entries) {
      if (table.find(entry.key) == nullptr) unknown(entry, joined(path, entry.key), joined(below, entry.key), part);
    }
  }

  void value(const DescribedKey& key, const Entry* entry, const std::string& path, const std::string& below,
             StationPart& part) {
    const bool within = entry != nullptr && key.below != nullptr;
    if (within && key.form == KeyForm::list) {
      list(key, *entry, path, below, part);
    } else if (within && stop_of(key) != 0) {
      own_part(key, *entry, path, part);
    } else if (within && entry->node.kind == NodeKind::table) {
      fields(*key.below, entry->node, path, below, part);
    } else {
      part.fields.push_back(field(key, entry, path, below));
    }
  }

  void list(const DescribedKey& key, const Entry& entry, const std::string& path, const std::string& below,
            StationPart& part) {
    if (!site::is_table_list(entry.node)) {
      part.fields.push_back(field(key, &entry, path, below));
    } else if (stop_of(key) != 0) {
      items(key, entry, path, owner_of(part));
    } else {
      const std::vector<std::string> names = names_of(entry.node);
      for (std::size_t i = 0; i < names.size(); ++i) {
        fields(*key.below, entry.node.items[i], joined(path, names[i]), joined(below, names[i]), part);
      }
    }
  }

  /// A part within a part: written as a table, or as the id of one on the shelf.
  void own_part(const DescribedKey& key, const Entry& entry, const std::string& path, const StationPart& owner) {
    if (entry.node.kind == NodeKind::table) return this->part(key, entry.node, path, {}, owner_of(owner));
    StationPart out = part_at(key, entry.node, path, owner.path);
    out.id = owner.id;
    out.product = owner.product;
    out.fields.push_back(field(key, &entry, path, key.key));
    parts.push_back(std::move(out));
  }

  static Owner owner_of(const StationPart& part) { return {part.path, part.id, part.product}; }

  StationField field(const DescribedKey& key, const Entry* entry, const std::string& path, const std::string& below) {
    StationField out{path, below, &key, std::nullopt, {}, {}};
    if (entry == nullptr) return out;
    out.text = std::string(site::text_of(text_, entry->node.where));
    out.shown = shown_node(key, entry->node);
    out.where = whole(*entry);
    return out;
  }

  void unknown(const Entry& entry, const std::string& path, const std::string& below, StationPart& part) {
    if (entry.has_header()) return;
    part.fields.push_back(
        {path, below, nullptr, std::string(site::text_of(text_, entry.node.where)), {}, whole(entry)});
  }

  static SourceSpan whole(const Entry& entry) {
    return {entry.node.where.text, std::min(entry.key_where.begin, entry.node.where.begin),
            std::max(entry.key_where.end, entry.node.where.end)};
  }

  std::string_view text_;
  std::vector<StationField> loose_;
};

bool covers(SourceSpan outer, SourceSpan inner) {
  return outer.begin < outer.end && outer.begin <= inner.begin && inner.end <= outer.end;
}

bool is_of(const StationPart& part, site::PartKind kind) {
  switch (kind) {
    case site::PartKind::product:
      return part.kind == "product";
    case site::PartKind::tank:
      return part.kind == "tank";
    case site::PartKind::pump:
      return part.kind == "pump";
    case site::PartKind::hose:
      return part.kind == "hose";
    case site::PartKind::place:
      return part.kind == "pump" || part.kind == "branch" || part.kind == "inlet";
    case site::PartKind::delivery:
      return part.kind == "delivery";
    case site::PartKind::pump_or_dispenser:
      return part.kind == "pump" || part.kind == "dispenser";
    case site::PartKind::incident_place:
      return part.kind == "dispenser" || part.kind == "inlet" || part.kind == "hose" || part.kind == "line" ||
             part.kind == "tank";
    case site::PartKind::tripping_part:
      return part.kind == "sump_sensor" || part.kind == "leak_detector" || part.kind == "emergency_stop" ||
             part.kind == "pump" || part.kind == "dispenser";
  }
  return false;
}

}  // namespace

std::vector<StationPart> station_parts(const Node& root, std::string_view text) {
  PartWalk walk(text);
  walk.root(root);
  tell_products(walk.parts);
  return std::move(walk.parts);
}

std::vector<std::string> ids_of(const std::vector<StationPart>& parts, site::PartKind kind) {
  std::vector<std::string> out;
  for (const StationPart& part : parts) {
    if (is_of(part, kind)) out.push_back(part.id);
  }
  return out;
}

std::string path_at(const std::vector<StationPart>& parts, SourceSpan where) {
  const std::string* path = nullptr;
  std::uint32_t size = 0;
  const auto consider = [&](SourceSpan outer, const std::string& named) {
    if (!covers(outer, where) || (path != nullptr && outer.end - outer.begin >= size)) return;
    path = &named;
    size = outer.end - outer.begin;
  };
  for (const StationPart& part : parts) {
    consider(part.where, part.path);
    for (const StationField& field : part.fields) consider(field.where, field.path);
  }
  return path == nullptr ? std::string() : *path;
}

}  // namespace forecourse::server
