#pragma once

#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/quantity_kind.h"
#include "forecourse/site/fields/rules.h"

namespace forecourse::server {

/// What may stand at a key: a plain value, a table, a list of tables; or a value that may be written as a table.
enum class KeyForm { value, table, list, loss, pipe, part };

struct DescribedTable;

/// One key of a table of the site file, as a form shows it.
struct DescribedKey {
  std::string key;
  std::string in;  ///< name of the table that has it
  KeyForm form = KeyForm::value;
  std::string kind;                        ///< "length", "text", "choice", "flag", "date", "number", "list", ...
  std::string help;                        ///< one sentence
  bool required = false;                   ///< a table without it is an error
  std::vector<std::string> choices;        ///< words of a closed list
  std::optional<site::PartKind> names;     ///< the value is the id of such a part
  const QuantityKind* quantity = nullptr;  ///< of a quantity
  const DescribedTable* below = nullptr;   ///< of a table, or of what may be written as one
};

struct DescribedTable {
  std::string name;  ///< "tank_shape"
  std::string help;
  std::vector<DescribedKey> keys;

  /// The key of this name; null if the table has none.
  [[nodiscard]] const DescribedKey* find(std::string_view key) const;
};

/// The table at the root of a site file, from the descriptions in site/fields.
[[nodiscard]] const DescribedTable& described_site_file();

/// Every table below the root, each once, in the order in which they are met.
[[nodiscard]] std::vector<const DescribedTable*> described_tables();

}  // namespace forecourse::server
