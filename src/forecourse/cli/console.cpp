#include "forecourse/cli/console.h"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <system_error>
#include <vector>

namespace forecourse::cli {
namespace {

constexpr std::size_t largest_file = std::size_t{64} << 20U;  // what is read at all [bytes]

bool is_utf8_locale() {
  for (const char* name : {"LC_ALL", "LC_CTYPE", "LANG"}) {
    const char* value = std::getenv(name);
    if (value == nullptr || *value == '\0') continue;
    const std::string text(value);
    return text.find("UTF-8") != std::string::npos || text.find("utf8") != std::string::npos;
  }
  return false;
}

int columns() {
  winsize size{};
  if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) return size.ws_col;
  const char* value = std::getenv("COLUMNS");
  return value != nullptr ? std::atoi(value) : 100;  // NOLINT(cert-err34-c): nonsense becomes the least width
}

}  // namespace

Console this_console() {
  Console console;
  console.is_terminal = isatty(STDOUT_FILENO) == 1;
  console.color = console.is_terminal && std::getenv("NO_COLOR") == nullptr;
  console.utf8 = is_utf8_locale();
  console.width = std::clamp(columns(), 60, 200);
  return console;
}

void print(const std::string& text) {
  std::fwrite(text.data(), 1, text.size(), stdout);
  std::fflush(stdout);
}

void print_error(const std::string& text) { std::fwrite(text.data(), 1, text.size(), stderr); }

bool read_file(const std::string& path, std::string& text) {
  std::error_code trouble;
  if (std::filesystem::is_directory(path, trouble)) {
    print_error(path + ": error: is a folder, not a site file\n");
    return false;
  }
  std::ifstream in(path, std::ios::binary);
  if (!in) {
    print_error(path + ": error: cannot be read (not there, or no permission)\n");
    return false;
  }
  text.clear();
  std::vector<char> piece(std::size_t{1} << 16U);
  while (in) {  // piece by piece: a device may never end
    in.read(piece.data(), static_cast<std::streamsize>(piece.size()));
    text.append(piece.data(), static_cast<std::size_t>(in.gcount()));
    if (text.size() <= largest_file) continue;
    print_error(path + ": error: is larger than 64 MiB, which no site file is\n");
    return false;
  }
  return true;
}

bool write_file(const std::string& path, const std::string& text) {
  const std::string beside = path + ".part";
  {
    std::ofstream out(beside, std::ios::binary | std::ios::trunc);
    out.write(text.data(), static_cast<std::streamsize>(text.size()));
    out.flush();
    if (!out) {
      print_error(path + ": error: cannot be written\n");
      return false;
    }
  }
  std::error_code trouble;
  std::filesystem::rename(beside, path, trouble);
  if (trouble) print_error(path + ": error: cannot be written: " + trouble.message() + "\n");
  return !trouble;
}

}  // namespace forecourse::cli
