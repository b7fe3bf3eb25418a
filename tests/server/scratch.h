#pragma once

#include <string>

namespace forecourse::server {

/// A new empty folder for one test, under the system's folder for such.
[[nodiscard]] std::string scratch_folder(const std::string& name);

/// The whole of a file; empty when there is none.
[[nodiscard]] std::string file_text(const std::string& path);

/// Writes a file as an editor does that knows nothing of us.
void write_outside(const std::string& path, const std::string& text);

/// A copy of Site S in a new folder.
[[nodiscard]] std::string copy_of_site_s(const std::string& name);

/// All names below a folder, links not followed, sorted; with the hidden files of ours left out.
[[nodiscard]] std::string names_below(const std::string& folder);

}  // namespace forecourse::server
