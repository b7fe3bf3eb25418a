#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/server/answers/station/described_keys.h"
#include "forecourse/server/answers/station/shown_value.h"
#include "forecourse/site/text/document.h"

namespace forecourse::server {

/// One value of a part: as typed, or a key that could be added.
struct StationField {
  std::string path;                    ///< as `site::set_value` takes it
  std::string key;                     ///< below the part: "bore", "shape.length"
  const DescribedKey* what = nullptr;  ///< null: a key that the site file does not have
  std::optional<std::string> text;     ///< the bytes as typed; empty: not entered
  ShownValue shown;
  SourceSpan where{};  ///< of key and value, where it is entered
};

/// A thing of the station with its values.
struct StationPart {
  std::string path;
  std::string kind;  ///< "tank", "spill_container", "nozzle"
  std::string id;
  int stop = 0;  ///< of the eleven of the course; 0: none
  std::string product;
  std::string of;                                     ///< path of the part it belongs to
  std::optional<std::pair<double, double>> position;  ///< [m]
  std::vector<StationField> fields;
  SourceSpan where{};
};

/// Every part in a site file, in the order of the tables of the format and of the text.
[[nodiscard]] std::vector<StationPart> station_parts(const site::Node& root, std::string_view text);

/// The ids in a site file that a reference to this kind of part may name.
[[nodiscard]] std::vector<std::string> ids_of(const std::vector<StationPart>& parts, site::PartKind kind);

/// The path of the smallest value, else part, that a place lies in; empty where none does.
[[nodiscard]] std::string path_at(const std::vector<StationPart>& parts, SourceSpan where);

}  // namespace forecourse::server
