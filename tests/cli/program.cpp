#include "cli/program.h"

#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace forecourse::cli {

std::string file_text(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::string quoted(const std::string& word) {
  std::string out = "'";
  for (const char c : word) out += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return out + "'";
}

std::string scratch_folder(const std::string& name) {
  const std::filesystem::path folder =
      std::filesystem::path(testing::TempDir()) / ("forecourse-" + name + "-" + std::to_string(getpid()));
  std::filesystem::remove_all(folder);
  std::filesystem::create_directories(folder);
  return folder.string();
}

Outcome run_program(const std::string& folder, const std::string& arguments, const std::string& environment) {
  const std::string left = scratch_folder("outcome");
  const std::string command = "cd " + quoted(folder) + " && " + environment + " " + quoted(FORECOURSE_PROGRAM) + " " +
                              arguments + " >" + quoted(left + "/out") + " 2>" + quoted(left + "/err") + " </dev/null";
  const int status = std::system(command.c_str());
  Outcome outcome{WIFEXITED(status) ? WEXITSTATUS(status) : -1, file_text(left + "/out"), file_text(left + "/err")};
  std::filesystem::remove_all(left);
  return outcome;
}

}  // namespace forecourse::cli
