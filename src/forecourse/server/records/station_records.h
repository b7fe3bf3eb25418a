#pragma once

#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/base/source_text.h"
#include "forecourse/server/answers/answers.h"
#include "forecourse/site/records/records.h"
#include "forecourse/store/records/site_names.h"

namespace forecourse::server {

/// The records of a station as they were read.
struct ReadRecords {
  std::string path;
  bool is_store = false;
  Parsed<site::records::Records> read;
  std::vector<SourceText> texts;  ///< that places of number 1 and on point into; 0 is the site file
};

/// A value of a row that is entered: the name of its column, and what was typed.
struct EnteredValue {
  std::string column;
  std::string text;
};

using EnteredRow = std::vector<EnteredValue>;

/// What became of rows that were entered.
struct Entered {
  bool stored = false;
  bool read_only = false;  ///< there is no store
  std::string error;
  std::string hint;
};

/// The records of the site that is open, for several threads: read once, and again when their files have changed.
class StationRecords {
 public:
  /// \param site  path of the site file that `given` belongs to
  /// \param given folder or store; empty: what lies beside a site file
  StationRecords(std::string site, std::string given) : site_(std::move(site)), given_(std::move(given)) {}

  /// Where the records of a site file are: what was given, else SITE.db, records/SITE or records beside it. Empty:
  /// there are none.
  [[nodiscard]] std::string path_of(const std::string& site_path) const;

  /// What answers ask for the records of a site file.
  /// \pre this outlives the answers
  [[nodiscard]] RecordsOf of(const std::string& site_path);

  /// True once after files of the records have changed.
  [[nodiscard]] bool changed(const std::string& site_path);

  /// Adds rows of one kind to the store, all or none. When this returns with `stored`, they are on the disk.
  [[nodiscard]] Entered enter(const std::string& site_path, const site::Site& site, const std::string& kind,
                              const std::vector<EnteredRow>& rows);

  /// Takes what was entered here last out of the store again.
  /// \param taken what it was
  [[nodiscard]] Entered take_back(const std::string& site_path, std::string& taken);

 private:
  [[nodiscard]] std::shared_ptr<const ReadRecords> read(const std::string& path, const site::Site& site);

  std::string site_;
  std::string given_;
  std::mutex mutex_;
  std::string stamp_;                        ///< of what was read: its files, their sizes and times, the site's names
  std::shared_ptr<const ReadRecords> last_;  ///< that was read
  std::string looked_;                       ///< the files at the last look
  bool looked_once_ = false;
};

}  // namespace forecourse::server
