#include "forecourse/server/pages/pdf.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>
#include <thread>
#include <vector>

#include "forecourse/server/pages/own_folder.h"

extern char** environ;

namespace forecourse::server {
namespace {

constexpr const char* program = "weasyprint";
constexpr const char* print_it = "print report.html from a browser";

/// How a program ended: its exit code, or why there is none.
struct Ended {
  int code = -1;
  int trouble = 0;  ///< errno, where it could not be started
  bool given_up = false;
};

/// Waits for a child; ends it where nobody waits for what it makes.
Ended wait_for(pid_t child, const std::function<bool()>& given_up) {
  constexpr std::chrono::milliseconds between_looks{20};
  Ended out;
  int status = 0;
  for (;;) {
    const pid_t done = waitpid(child, &status, given_up && !out.given_up ? WNOHANG : 0);
    if (done == child) break;
    if (done < 0 && errno != EINTR) return {-1, errno, false};
    if (done != 0) continue;
    out.given_up = given_up();
    if (out.given_up) {
      kill(child, SIGKILL);
    } else {
      std::this_thread::sleep_for(between_looks);
    }
  }
  out.code = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  return out;
}

/// Runs a program with arguments, without a shell, without its output and without what is open here.
Ended run_quietly(const std::vector<std::string>& words, const std::function<bool()>& given_up) {
  std::vector<char*> arguments;
  arguments.reserve(words.size() + 1);
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
#if defined(__GLIBC_PREREQ)
#if __GLIBC_PREREQ(2, 34)
  posix_spawn_file_actions_addclosefrom_np(&actions, STDERR_FILENO + 1);
#endif
#endif
  pid_t child = 0;
  const int trouble = posix_spawnp(&child, arguments.front(), &actions, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&actions);
  return trouble != 0 ? Ended{-1, trouble, false} : wait_for(child, given_up);
}

std::string install_it() { return std::string("apt-get install ") + program + ", or " + print_it; }

PdfMade told(const Ended& ended) {
  const std::string name = std::string("'") + program + "'";
  if (ended.given_up) return {"nobody waited for it", "", false};
  if (ended.trouble == ENOENT) {
    return {"the program " + name + " is not installed", install_it(), true};
  }
  if (ended.code < 0) return {name + " cannot be started: " + std::strerror(ended.trouble), "", false};
  return {name + " ended with code " + std::to_string(ended.code), print_it, false};
}

bool write_text(const std::string& file, const std::string& text) {
  std::ofstream out(file, std::ios::binary);
  out.write(text.data(), static_cast<std::streamsize>(text.size()));
  out.close();
  return out.good();
}

}  // namespace

report::html::Paper paper_of(const std::string& word, site::Display display) {
  const bool letter = word.empty() ? display == site::Display::us : word == "letter";
  return letter ? report::html::Paper::letter : report::html::Paper::a4;
}

std::string pdf_hint() {
  const char* path = std::getenv("PATH");
  std::stringstream folders(path == nullptr ? "" : path);
  for (std::string folder; std::getline(folders, folder, ':');) {
    if (access((std::filesystem::path(folder) / program).c_str(), X_OK) == 0) return {};
  }
  return install_it();
}

PdfMade write_pdf(const std::string& file, const std::string& report, report::html::Paper paper,
                  const std::function<bool()>& given_up) {
  const std::string source = file + ".html";
  const std::string made = file + ".part";
  if (!write_text(source, report::html::on_paper(report, paper))) {
    return {source + " cannot be written: " + std::strerror(errno), "", false};
  }
  const Ended ended = run_quietly({program, "--quiet", source, made}, given_up);
  std::remove(source.c_str());
  if (ended.code == 0 && std::rename(made.c_str(), file.c_str()) == 0) return {};
  std::remove(made.c_str());
  return told(ended);
}

PdfMade make_pdf(std::string& bytes, const std::string& report, report::html::Paper paper,
                 const std::function<bool()>& given_up) {
  const OwnFolder folder;
  if (folder.path().empty()) {
    return {std::string("no folder for the pages can be made: ") + std::strerror(errno), "", false};
  }
  const std::string file = folder.path() + "/report.pdf";
  PdfMade made = write_pdf(file, report, paper, given_up);
  if (!made.good()) return made;
  std::ifstream in(file, std::ios::binary);
  bytes.assign(std::istreambuf_iterator<char>(in), {});
  return in.good() ? made : PdfMade{"the pages that were set cannot be read", "", false};
}

}  // namespace forecourse::server
