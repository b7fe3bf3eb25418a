#include "forecourse/server/pages/own_folder.h"

#include <cstdlib>
#include <filesystem>
#include <system_error>

namespace forecourse::server {

OwnFolder::OwnFolder() {
  std::error_code trouble;
  path_ = (std::filesystem::temp_directory_path(trouble) / "forecourse-XXXXXX").string();
  if (trouble || mkdtemp(path_.data()) == nullptr) path_.clear();
}

OwnFolder::~OwnFolder() {
  std::error_code ignored;
  if (!path_.empty()) std::filesystem::remove_all(path_, ignored);
}

}  // namespace forecourse::server
