#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "forecourse/server/desk/disk.h"
#include "forecourse/server/desk/kept_text.h"

namespace forecourse::server {

/// The hidden file beside a site file that holds what can be undone. What was added to it is on the disk. As long as it
/// is open, nobody else can open it: two workbenches never keep the same site file.
class Journal {
 public:
  explicit Journal(const std::string& site_path);

  /// Takes the journal for this process.
  ///
  /// \return why not; empty: it is ours
  [[nodiscard]] std::string open();

  /// What it tells; empty where there is none, or where it holds nothing whole.
  [[nodiscard]] std::optional<KeptText> read() const;

  /// Adds a move, then writes the whole anew where it has become long or could not be added to.
  ///
  /// \param kept the text after the move
  /// \return why not; empty: it is on the disk
  [[nodiscard]] std::string add(const Move& move, const KeptText& kept);

  /// Writes it anew: the whole, without moves.
  [[nodiscard]] std::string rewrite(const KeptText& kept);

 private:
  std::string path_;
  Descriptor file_;
  std::size_t size_ = 0;     ///< bytes of the file
  std::size_t compact_ = 0;  ///< bytes when it was written anew
  bool torn_ = true;         ///< nothing may be added behind what it holds
};

}  // namespace forecourse::server
