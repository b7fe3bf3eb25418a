#pragma once

#include <map>
#include <string>

namespace forecourse::server {

/// A file of the page, as it is sent.
struct Asset {
  std::string type;
  std::string bytes;
  std::string gzip;      ///< the same, compressed; empty where that is not smaller
  std::string tag;       ///< another one for other bytes, in quotes
  bool lasting = false;  ///< its name changes with its bytes: it may be kept for good
};

/// The files of the page, by the path they are asked for under: "/", "/assets/index-1a2b.js".
using Assets = std::map<std::string, Asset>;

/// Reads a folder into memory: no request ever leads to the disk. Links that lead out of it are passed over.
///
/// \return empty where there is no index.html
[[nodiscard]] Assets read_assets(const std::string& folder);

/// The one plain page there is without a built one.
[[nodiscard]] Assets plain_page();

}  // namespace forecourse::server
