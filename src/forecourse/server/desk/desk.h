#pragma once

#include <functional>
#include <memory>
#include <mutex>
#include <string>
#include <vector>

#include "forecourse/base/diagnostic.h"
#include "forecourse/server/answers/answers.h"
#include "forecourse/server/desk/open_site.h"

namespace forecourse::server {

/// Why a wish was not granted.
enum class Refusal {
  none,
  stale,      ///< it was meant for a text that has changed since
  refused,    ///< it does not fit the text, or the name is none
  there,      ///< a file of this name is there already
  not_there,  ///< no file of this name
  read_only,
  failed,  ///< the disk does not do it
};

/// What became of a wish, and the site after it.
struct Outcome {
  Refusal refusal = Refusal::none;
  std::string error;
  std::string hint;
  std::vector<std::string> changed;     ///< of a stale one: paths of the values that changed since
  std::vector<Diagnostic> diagnostics;  ///< of a refused one
  StationFacts facts;
};

/// The one site file that is open, for several threads. What it says is done is on the disk.
class Desk {
 public:
  /// Told of each new text: its revision, and "edit", "outside" or "opened". It must not ask the desk.
  using Told = std::function<void(int revision, const char* why)>;

  explicit Desk(Told told = {}) : told_(std::move(told)) {}

  /// Opens a site file of any folder. Names of the other functions are names in this folder.
  ///
  /// \return why not; empty: it is open
  [[nodiscard]] std::string open_path(const std::string& path);

  [[nodiscard]] StationFacts facts() const;
  /// The site files of the folder.
  [[nodiscard]] std::vector<std::string> names() const;

  /// Makes edits meant for a revision. On a text that has changed since they are made where other values changed.
  [[nodiscard]] Outcome edit(int revision, const std::string& label, const std::vector<Edit>& edits);
  [[nodiscard]] Outcome replace(int revision, const std::string& label, const std::string& text);
  [[nodiscard]] Outcome undo(int revision);
  [[nodiscard]] Outcome redo(int revision);

  [[nodiscard]] Outcome open(const std::string& name);
  /// Writes the open text into a new file, which is then the open one.
  [[nodiscard]] Outcome save_as(const std::string& name);
  /// Writes a template into a new file, which is then the open one.
  [[nodiscard]] Outcome create(const std::string& name, const std::string& template_id);

  /// Looks whether others have written into the file.
  void look();

 private:
  using Plan = std::function<Outcome(Move& move)>;

  [[nodiscard]] StationFacts facts_now() const;
  [[nodiscard]] Outcome granted() const;
  [[nodiscard]] Outcome refuse(Refusal refusal, const std::string& error, const std::string& hint) const;
  [[nodiscard]] Outcome stale(const std::string& then) const;
  [[nodiscard]] Outcome stale_at(int revision) const;
  [[nodiscard]] Outcome make_move(const Plan& plan);
  [[nodiscard]] Outcome plan_edit(int revision, const std::string& label, const std::vector<Edit>& edits,
                                  Move& move) const;
  [[nodiscard]] Outcome write_new(const std::string& name, const std::string& text);
  [[nodiscard]] Outcome switch_to(const std::string& path, Begins begins);
  void tell(const char* why) const;

  mutable std::mutex mutex_;
  std::string folder_;
  std::string file_;  ///< name of the open file
  std::unique_ptr<OpenSite> site_;
  Told told_;
};

}  // namespace forecourse::server
