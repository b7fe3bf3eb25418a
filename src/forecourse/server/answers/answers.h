#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/base/context.h"
#include "forecourse/base/diagnostic.h"
#include "forecourse/report/json_document.h"
#include "forecourse/site/site.h"

namespace forecourse::server {

/// One change of a site file, as the workbench asks for it: `path` with a `value` to set, or `path` with `remove`, or
/// a whole block to `append` at the end.
struct Edit {
  std::string path;
  std::optional<std::string> value;
  bool remove = false;
  std::string append;
};

/// Makes edits one after the other.
///
/// \return the new text; where one of them is refused, the text as it was, with the problems of all that are refused
[[nodiscard]] Parsed<std::string> apply(const std::string& text, const std::vector<Edit>& edits);

/// The open site file, as the keeper of it knows it.
struct StationFacts {
  std::string text;
  int revision = 0;
  std::string file;  ///< its name, without the folder
  bool editable = false;
  std::string undo;  ///< label of the step that could be undone; empty: none
  std::string redo;
  std::string path = {};  ///< whole path of the file
};

/// The station with every value that is in the file, and every key that could be added, for forms; what the keys are
/// say the tables. A file that is half right gives what can be read of it.
[[nodiscard]] report::Json station_json(const StationFacts& facts);

/// The keys of every table of a site file, by its name. They are the same for every station.
[[nodiscard]] const report::Json& tables_json();

class SharedStudies;
struct ReadRecords;

/// Gives the records of the station as it stands; null: there are none. See server/records/station_records.h.
using RecordsOf = std::function<std::shared_ptr<const ReadRecords>(const site::Site& site)>;

/// Answers wants of one text: the file is read once, and a flow that several of them ask for is solved once.
class Answers {
 public:
  /// \param text the site file
  /// \param file its name, for the places of warnings
  /// \param records of the station; empty: none are given
  Answers(std::string text, std::string file, RecordsOf records = {});
  ~Answers();
  Answers(const Answers&) = delete;
  Answers& operator=(const Answers&) = delete;

  /// What a page asks for: the document of a study, as the command of that name prints it with --json, or a drawing.
  ///
  /// \param want    {"study": ...} or {"drawing": ...} with their options
  /// \param context progress and cancelling of long studies
  /// \return {"document": ...}, {"svg": ..., "remarks": [...]} or {"error": ..., "hint": ...}
  [[nodiscard]] report::Json answer(const report::Json& want, const Context& context);

 private:
  std::string text_;
  std::string file_;
  RecordsOf records_;
  std::unique_ptr<SharedStudies> shared_;
};

/// The answer to one want; as `Answers` gives it.
[[nodiscard]] report::Json answer(const std::string& text, const std::string& file, const report::Json& want,
                                  const Context& context, const RecordsOf& records = {});

}  // namespace forecourse::server
