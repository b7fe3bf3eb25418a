#pragma once

#include <string>
#include <utility>
#include <vector>

#include "forecourse/handover/parts/station_parts.h"

namespace forecourse::handover {

/// What the parts at one place of a file have in common.
struct Place {
  std::string path;     ///< of the table that holds them: "dispenser.D1.hose.D1.a"
  std::string subject;  ///< what findings call it
  std::string owner;
  std::vector<std::string> products;
  std::vector<std::string> places = {};
  bool of_tanker = false;
  const site::Inlet* inlet = nullptr;
  const site::Hose* hose = nullptr;
};

/// Parts as they are found, each with its place in the file.
class PartList {
 public:
  StationPart& add(Stop stop, const char* kind, const Place& at, const std::string& key, SourceSpan where,
                   PartData data);

  /// A table of its own, if it is there.
  template <class Table>
  void add_if(Stop stop, const char* kind, const Place& at, const char* key, const std::optional<Table>& table) {
    if (table) add(stop, kind, at, key, table->where, &*table);
  }

  /// A fact that says that there is such a part.
  void add_fact(Stop stop, const char* kind, const Place& at, const char* key, const site::Fact& fact, SourceSpan where,
                PartData data) {
    if (fact.value_or(false)) add(stop, kind, at, key, where, data);
  }

  /// A run of pipe or hose, and the fittings along it where a loss of theirs is entered.
  void add_pipe(Stop stop, const char* kind, const Place& at, const char* key, const std::optional<site::Pipe>& pipe);

  /// The fittings of a pipe whose table is at `path`: how many is not told by their loss.
  void add_fittings(Stop stop, const Place& at, const site::Pipe& pipe);

  void add_seals(Stop stop, const Place& at, const std::vector<site::EntrySeal>& seals);

  /// The sump of a tank or a dispenser with its sensor and seals.
  void add_sump(const char* kind, const Place& at, const site::Sump& sump);

  [[nodiscard]] std::vector<StationPart> in_course_order() &&;

 private:
  std::vector<StationPart> parts_;
};

/// How a path calls the item of a list: by its name, else by its number from 1.
[[nodiscard]] std::string item(const char* list, const std::string& name, std::size_t index);

template <class Items>
[[nodiscard]] std::string item(const char* list, const Items& items, const typename Items::value_type& one) {
  return item(list, one.id.text, static_cast<std::size_t>(&one - items.data()));
}

/// The place of a table within one.
[[nodiscard]] Place within(const Place& at, const std::string& key);

/// Each once, in the order in which they first stand.
void add_product(std::vector<std::string>& products, const std::string& id);

// The parts of one section of a site file.
void list_tanks(const site::Site& site, PartList& out);
void list_piping(const site::Site& site, PartList& out);
void list_dispensers(const site::Site& site, PartList& out);
void list_deliveries(const site::Site& site, PartList& out);
void list_safety(const site::Site& site, PartList& out);

}  // namespace forecourse::handover
