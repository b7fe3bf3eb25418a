#include "forecourse/server/desk/journal.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>

#include "forecourse/server/desk/journal_line.h"

namespace forecourse::server {
namespace {

constexpr std::size_t largest_journal = std::size_t{256} << 20U;  // what is read at all [bytes]
constexpr std::size_t least_growth = std::size_t{1} << 20U;       // before it is written anew [bytes]

const char* const taken = "another workbench has it open";

Descriptor open_journal(const std::string& path, int flags) {
  return Descriptor(open(path.c_str(), O_WRONLY | O_APPEND | O_CREAT | O_NOFOLLOW | O_CLOEXEC | flags, 0600));
}

bool is_at(const Descriptor& file, const std::string& path) {
  struct stat here {};
  struct stat there {};
  return fstat(file.number(), &here) == 0 && lstat(path.c_str(), &there) == 0 && here.st_ino == there.st_ino;
}

}  // namespace

Journal::Journal(const std::string& site_path) : path_(beside(site_path, ".journal")) {}

std::string Journal::open() {
  while (true) {  // again where it was written anew between opening and locking
    Descriptor file = open_journal(path_, 0);
    if (!file.open()) return std::strerror(errno);
    if (flock(file.number(), LOCK_EX | LOCK_NB) != 0) return taken;
    if (!is_at(file, path_)) continue;
    file_ = std::move(file);
    return {};
  }
}

std::optional<KeptText> Journal::read() const {
  std::string text;
  if (!read_whole(path_, largest_journal, text).empty()) return std::nullopt;
  return read_journal(text);
}

std::string Journal::add(const Move& move, const KeptText& kept) {
  if (torn_ || size_ > 2 * compact_ + least_growth) return rewrite(kept);
  const std::string line = journal_line(move);
  const std::string why = append_all(file_, line);
  size_ += line.size();
  torn_ = !why.empty();
  return torn_ ? rewrite(kept) : std::string();
}

std::string Journal::rewrite(const KeptText& kept) {
  const std::string fresh = path_ + ".new";
  unlink(fresh.c_str());
  Descriptor file = open_journal(fresh, O_EXCL);
  if (!file.open()) return std::strerror(errno);
  if (flock(file.number(), LOCK_EX | LOCK_NB) != 0) return taken;
  const std::string line = journal_line(kept);
  std::string why = append_all(file, line);
  if (!why.empty()) return why;
  if (rename(fresh.c_str(), path_.c_str()) != 0) return std::strerror(errno);
  settle_folder(path_);
  file_ = std::move(file);
  size_ = compact_ = line.size();
  torn_ = false;
  return {};
}

}  // namespace forecourse::server
