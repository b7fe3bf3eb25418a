// The program is killed at random moments of imports and of entry: what it said is stored is there, and the store is
// sound.
#include <fcntl.h>
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <csignal>
#include <filesystem>
#include <fstream>
#include <map>
#include <optional>
#include <random>
#include <set>
#include <thread>

#include "cli/program.h"
#include "forecourse/store/store.h"

namespace forecourse::cli {
namespace {

using std::chrono::duration;
using std::chrono::steady_clock;

constexpr int rows_of_import = 1000;
constexpr int rows_of_entry = 6;

/// Runs a line of the shell in a process group of its own; kills it all after a time, or waits for its end. What it
/// printed is in the file `said`. \return true if it was killed before its end
bool run_and_kill(const std::string& line, const std::string& said, std::optional<double> after_seconds) {
  std::filesystem::remove(said);  // a run that is killed before it speaks has said nothing
  const pid_t child = fork();
  if (child == 0) {
    setpgid(0, 0);
    const int out = open(said.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    dup2(out, STDOUT_FILENO);
    dup2(out, STDERR_FILENO);
    execl("/bin/sh", "sh", "-c", line.c_str(), nullptr);
    _exit(127);
  }
  setpgid(child, child);
  if (after_seconds) {
    std::this_thread::sleep_for(duration<double>(*after_seconds));
    kill(-child, SIGKILL);
  }
  int status = 0;
  waitpid(child, &status, 0);
  return WIFSIGNALED(status);
}

std::string import_line(const std::string& folder, int n) {
  std::filesystem::create_directories(fmt::format("{}/{}", folder, n));
  std::ofstream file(fmt::format("{}/{}/dips.csv", folder, n));
  file << "day,time,tank,depth\n";
  for (int row = 0; row < rows_of_import; ++row) {
    file << fmt::format("2026-11-{:02},{:02}:{:02},I{},{} 1/8 in\n", 1 + row / 60 % 28, row / 1680, row % 60, n,
                        20 + row % 50);
  }
  return fmt::format("{} records import {}/station.db {}/{}/dips.csv", FORECOURSE_PROGRAM, folder, folder, n);
}

std::string entry_line(const std::string& folder, int n) {
  std::string line;
  for (int row = 0; row < rows_of_entry; ++row) {
    line += fmt::format("{} records add {}/station.db dips day=2026-11-02 time=06:{:02} tank=E{} depth=\"70 in\"; ",
                        FORECOURSE_PROGRAM, folder, row, n);
  }
  return line;
}

/// Rows of each tank in the store, which must be sound.
std::map<std::string, int> rows_by_tank(const std::string& path) {
  auto opened = store::open_store(path, store::Opening::may_create);
  EXPECT_TRUE(opened.ok());
  std::map<std::string, int> rows;
  if (!opened.ok()) return rows;
  EXPECT_EQ(opened.value->faults(), std::vector<std::string>());
  opened.value->each_row(*store::find_kind("dips"), [&](const store::Row& row) { ++rows[row.values[2].text]; });
  return rows;
}

int count_of(const std::string& text, const std::string& what) {
  int count = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++count;
  return count;
}

TEST(FullRecordsKill, NothingAcknowledgedIsLostIn200Kills) {
  const std::string folder = scratch_folder("records-kill");
  const std::string path = folder + "/station.db";
  const std::string said = folder + "/said";
  // How long each takes when it is left alone.
  std::array<double, 2> takes{};
  for (int n = 0; n < 2; ++n) {
    const auto start = steady_clock::now();
    EXPECT_FALSE(run_and_kill(n == 0 ? import_line(folder, 0) : entry_line(folder, 1), said, std::nullopt));
    takes[static_cast<std::size_t>(n)] = duration<double>(steady_clock::now() - start).count();
  }
  std::map<std::string, int> acknowledged{{"I0", rows_of_import}, {"E1", rows_of_entry}};
  std::mt19937 random(20261125);
  std::uniform_real_distribution<double> share(0.0, 1.1);
  int killed = 0;
  int acknowledged_in_all = 0;
  int runs = 0;
  for (int n = 2; killed < 200 && n < 500; ++n) {
    ++runs;
    const bool import = n % 2 == 0;
    const std::string line = import ? import_line(folder, n) : entry_line(folder, n);
    double& whole = takes[import ? 0 : 1];
    const bool was_killed = run_and_kill(line, said, share(random) * whole);
    whole *= was_killed ? 1.02 : 0.9;  // the machine may have become slower or faster
    killed += was_killed ? 1 : 0;
    const int stored = count_of(file_text(said), "Stored: ");
    if (stored > 0) acknowledged[fmt::format("{}{}", import ? 'I' : 'E', n)] = import ? rows_of_import : stored;
    acknowledged_in_all += stored;
    const auto there = rows_by_tank(path);
    for (const auto& [tank, rows] : acknowledged) {
      ASSERT_TRUE(there.contains(tank)) << tank << " was acknowledged; kill " << n;
      ASSERT_GE(there.at(tank), rows) << tank << "; kill " << n;
    }
    for (const auto& [tank, rows] : there) {
      if (tank.front() != 'I') continue;
      ASSERT_EQ(rows, rows_of_import) << "half an import of " << tank << "; kill " << n;
    }
  }
  std::printf(
      "killed %d of %d runs before their end; all runs together said of %d imports and rows that they are stored\n",
      killed, runs, acknowledged_in_all);
  EXPECT_EQ(killed, 200);
  EXPECT_GT(acknowledged_in_all, 50);
}

}  // namespace
}  // namespace forecourse::cli
