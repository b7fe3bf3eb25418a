#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

namespace forecourse::server {

constexpr std::size_t largest_site = std::size_t{4} << 20U;  ///< bytes of a site file that the workbench opens

/// An open file of the system, closed with its owner.
class Descriptor {
 public:
  explicit Descriptor(int number = -1) : number_(number) {}
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&& other) noexcept {
    std::swap(number_, other.number_);
    return *this;
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor();

  [[nodiscard]] int number() const { return number_; }
  [[nodiscard]] bool open() const { return number_ >= 0; }

 private:
  int number_;
};

/// What the folder says of a file; another one after each write.
struct Seal {
  std::uint64_t node = 0;
  std::int64_t size = -1;
  std::int64_t written_ns = 0;
  std::int64_t changed_ns = 0;

  friend bool operator==(const Seal&, const Seal&) = default;
};

/// The seal of a file; the size is -1 where there is none.
[[nodiscard]] Seal seal_of(const std::string& path);

// What goes wrong on the disk is told as a text: why it could not be done. An empty text: it is done.

/// The whole of an ordinary file; a folder, pipe or device is refused.
[[nodiscard]] std::string read_whole(const std::string& path, std::size_t largest, std::string& text);

/// Writes a new file and puts it on the disk. One that is there already is refused, also where it is a link.
[[nodiscard]] std::string create_file(const std::string& path, std::string_view text, unsigned mode);

/// Writes all of it behind what an open file holds, and puts it on the disk.
[[nodiscard]] std::string append_all(const Descriptor& file, std::string_view text);

/// Puts the entries of the folder of a path on the disk.
void settle_folder(const std::string& path);

enum class Saved { done, changed_outside, failed };

struct SaveResult {
  Saved saved = Saved::done;
  std::string why;  ///< of one that failed
};

/// Puts a new text in the place of a file, whole or not at all: written beside it, put on the disk, exchanged with the
/// file. Where the file held another text than expected at that moment, it gets it back. The mode stays. A file
/// that is gone is made anew.
[[nodiscard]] SaveResult save_over(const std::string& path, std::string_view expected, std::string_view text);

/// Where `save_over` writes before the exchange: hidden, in the same folder.
[[nodiscard]] std::string beside(const std::string& path, const char* ending);

}  // namespace forecourse::server
