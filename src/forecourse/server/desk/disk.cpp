#include "forecourse/server/desk/disk.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <vector>

namespace forecourse::server {
namespace {

std::string reason() { return std::strerror(errno); }

std::int64_t nanoseconds(const timespec& time) {
  return static_cast<std::int64_t>(time.tv_sec) * 1'000'000'000 + static_cast<std::int64_t>(time.tv_nsec);
}

/// The new text beside the file, with the mode and, where that is allowed, the owner of the file.
std::string write_beside(const std::string& path, const std::string& temporary, std::string_view text) {
  struct stat status {};
  const bool there = stat(path.c_str(), &status) == 0;
  unlink(temporary.c_str());  // what an interrupted save left
  const unsigned mode = there ? status.st_mode & 07777U : 0644U;
  std::string why = create_file(temporary, text, mode);
  if (!why.empty() || !there) return why;
  if (chown(temporary.c_str(), status.st_uid, status.st_gid) == 0) chmod(temporary.c_str(), mode);
  return {};
}

/// True if the two files have changed places.
bool exchange(const std::string& a, const std::string& b) {
  return renameat2(AT_FDCWD, a.c_str(), AT_FDCWD, b.c_str(), RENAME_EXCHANGE) == 0;
}

/// For file systems that cannot exchange, and for a file that is gone.
SaveResult replace(const std::string& path, const std::string& temporary, std::string_view expected) {
  std::string now;
  const bool there = seal_of(path).size >= 0;
  if (there && (!read_whole(path, largest_site, now).empty() || now != expected)) {
    return {Saved::changed_outside, {}};
  }
  if (rename(temporary.c_str(), path.c_str()) != 0) return {Saved::failed, reason()};
  return {};
}

}  // namespace

Descriptor::~Descriptor() {
  if (number_ >= 0) close(number_);
}

Seal seal_of(const std::string& path) {
  struct stat status {};
  if (stat(path.c_str(), &status) != 0) return {};
  return {status.st_ino, status.st_size, nanoseconds(status.st_mtim), nanoseconds(status.st_ctim)};
}

std::string read_whole(const std::string& path, std::size_t largest, std::string& text) {
  const Descriptor file(open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
  if (!file.open()) return reason();
  struct stat status {};
  if (fstat(file.number(), &status) != 0) return reason();
  if (!S_ISREG(status.st_mode)) return "it is no ordinary file";
  text.clear();
  std::vector<char> piece(std::size_t{1} << 16U);
  while (true) {
    const ssize_t count = read(file.number(), piece.data(), piece.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return reason();
    if (count == 0) return {};
    text.append(piece.data(), static_cast<std::size_t>(count));
    if (text.size() > largest) return "it is larger than any site file";
  }
}

std::string create_file(const std::string& path, std::string_view text, unsigned mode) {
  const Descriptor file(open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, mode));
  if (!file.open()) return reason();
  if (fchmod(file.number(), mode) != 0) return reason();
  std::string why = append_all(file, text);
  if (!why.empty()) unlink(path.c_str());
  return why;
}

std::string append_all(const Descriptor& file, std::string_view text) {
  while (!text.empty()) {
    const ssize_t count = write(file.number(), text.data(), text.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return reason();
    text.remove_prefix(static_cast<std::size_t>(count));
  }
  return fsync(file.number()) == 0 ? std::string() : reason();
}

void settle_folder(const std::string& path) {
  const std::string folder = std::filesystem::path(path).parent_path().string();
  const Descriptor open_folder(open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (open_folder.open()) fsync(open_folder.number());
}

std::string beside(const std::string& path, const char* ending) {
  const std::filesystem::path file(path);
  return (file.parent_path() / ("." + file.filename().string() + ending)).string();
}

SaveResult save_over(const std::string& path, std::string_view expected, std::string_view text) {
  const std::string temporary = beside(path, ".saving");
  const std::string why = write_beside(path, temporary, text);
  if (!why.empty()) return {Saved::failed, why};
  SaveResult result;
  if (exchange(temporary, path)) {
    std::string before;  // what the file held at the moment of the exchange
    const bool known = read_whole(temporary, largest_site, before).empty() && before == expected;
    if (!known && !exchange(temporary, path)) return {Saved::failed, "it changed while it was saved"};
    if (!known) result.saved = Saved::changed_outside;
  } else {
    result = replace(path, temporary, expected);
  }
  settle_folder(path);
  unlink(temporary.c_str());
  return result;
}

}  // namespace forecourse::server
