#include "forecourse/cli/pdf.h"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <vector>

#include "forecourse/cli/console.h"

extern char** environ;

namespace forecourse::cli {
namespace {

constexpr const char* program = "weasyprint";

/// Runs a program with arguments, without a shell and without its output; its exit code, or -1 with `errno` where it
/// could not be started.
int run_quietly(const std::vector<std::string>& words) {
  std::vector<char*> arguments;
  arguments.reserve(words.size() + 1);
  for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
  arguments.push_back(nullptr);
  posix_spawn_file_actions_t actions;
  posix_spawn_file_actions_init(&actions);
  posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
  posix_spawn_file_actions_addopen(&actions, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
  pid_t child = 0;
  const int trouble = posix_spawnp(&child, arguments.front(), &actions, nullptr, arguments.data(), environ);
  posix_spawn_file_actions_destroy(&actions);
  if (trouble != 0) {
    errno = trouble;
    return -1;
  }
  int status = 0;
  while (waitpid(child, &status, 0) < 0) {
    if (errno != EINTR) return -1;
  }
  return WIFEXITED(status) ? WEXITSTATUS(status) : 128;
}

bool explain(const std::string& file, int code, int trouble) {
  if (code < 0 && trouble == ENOENT) {
    print_error(file + ": error: not written: the program '" + program + "' is not installed\n" +
                "  hint: apt-get install weasyprint, or print report.html from a browser\n");
  } else if (code < 0) {
    print_error(file + ": error: not written: '" + program + "' cannot be started: " + std::strerror(trouble) + "\n");
  } else {
    print_error(file + ": error: not written: '" + program + "' ended with code " + std::to_string(code) +
                "\n  hint: print report.html from a browser\n");
  }
  return false;
}

}  // namespace

report::html::Paper paper_of(const std::string& word, site::Display display) {
  const bool letter = word.empty() ? display == site::Display::us : word == "letter";
  return letter ? report::html::Paper::letter : report::html::Paper::a4;
}

bool write_pdf(const std::string& file, const std::string& report, report::html::Paper paper) {
  const std::string source = file + ".html";
  const std::string made = file + ".part";
  if (!write_file(source, report::html::on_paper(report, paper))) return false;
  const int code = run_quietly({program, "--quiet", source, made});
  const int trouble = errno;
  std::remove(source.c_str());
  if (code == 0 && std::rename(made.c_str(), file.c_str()) == 0) return true;
  std::remove(made.c_str());
  return explain(file, code, trouble);
}

}  // namespace forecourse::cli
