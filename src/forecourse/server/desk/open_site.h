#pragma once

#include <deque>
#include <memory>
#include <optional>
#include <string>
#include <utility>

#include "forecourse/server/desk/disk.h"
#include "forecourse/server/desk/journal.h"
#include "forecourse/server/desk/kept_text.h"

namespace forecourse::server {

/// Whether a journal beside a file is that of the file, or was left by another of its name.
enum class Begins { with_journal, afresh };

/// A site file that is open: its text, what can be undone, and the two files that hold them. Not for several threads.
class OpenSite {
 public:
  /// Opens a file. What others have written into it since the journal was kept becomes a step that can be undone.
  ///
  /// \param path     of the file itself, no link
  /// \param revision the least revision it is to have
  /// \param begins   afresh: nothing can be undone, whatever lies beside it
  /// \param why      what is wrong with it, where there is no result
  [[nodiscard]] static std::unique_ptr<OpenSite> open(const std::string& path, int revision, Begins begins,
                                                      std::string& why);

  [[nodiscard]] const KeptText& kept() const { return kept_; }
  [[nodiscard]] const std::string& path() const { return path_; }
  /// Why it cannot be changed; empty: it can.
  [[nodiscard]] const std::string& read_only() const { return read_only_; }

  /// Reads the file again. What others have written becomes a step that can be undone.
  ///
  /// \param why set where the file is there but cannot be read
  /// \return true: there was something new
  bool look(std::string& why);

  /// The same, but only where the file has not been written since the last time this was asked: whoever writes it has
  /// come to an end.
  bool look_when_calm();

  /// The text that had a revision, of the last 200 since the file was opened.
  [[nodiscard]] std::optional<std::string> text_at(int revision) const;

  /// Makes a move and puts its text into the file. Done: it is on the disk, and so is what undoes it.
  [[nodiscard]] SaveResult write(const Move& move);

 private:
  explicit OpenSite(std::string path) : path_(std::move(path)), journal_(path_) {}
  [[nodiscard]] std::string take_file();
  void take_journal(int revision, Begins begins);
  void adopt(std::string text);
  void moved(const std::string& before);

  std::string path_;
  Journal journal_;
  KeptText kept_;
  std::string mark_;  ///< the byte order mark with which the file begins, or nothing
  std::string read_only_;
  Seal seal_;                                   ///< of the file as it was last read
  Seal seen_;                                   ///< when it was last looked for calm
  std::deque<std::pair<int, Change>> changes_;  ///< what made each revision of the one before
};

}  // namespace forecourse::server
