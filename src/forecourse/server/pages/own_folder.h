#pragma once

#include <string>

namespace forecourse::server {

/// A folder for files that are made for somebody else; gone with this.
class OwnFolder {
 public:
  OwnFolder();
  ~OwnFolder();
  OwnFolder(const OwnFolder&) = delete;
  OwnFolder& operator=(const OwnFolder&) = delete;

  /// Empty where none could be made; errno tells why.
  [[nodiscard]] const std::string& path() const { return path_; }

 private:
  std::string path_;
};

}  // namespace forecourse::server
