#include <csignal>
#include <exception>
#include <string>
#include <vector>

#include "forecourse/cli/console.h"
#include "forecourse/cli/run.h"

int main(int argc, char** argv) {
  std::signal(SIGPIPE, SIG_DFL);  // a reader that has seen enough ends us quietly
  try {
    return static_cast<int>(forecourse::cli::run({argv + 1, argv + argc}));
  } catch (const std::exception& fault) {
    forecourse::cli::print_error(std::string("error: our fault: ") + fault.what() +
                                 "\n  hint: keep the site file and the command, and report both\n");
    return static_cast<int>(forecourse::cli::Exit::our_fault);
  }
}
