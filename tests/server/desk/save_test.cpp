// What is on the disk, and in which order, when an edit is answered; and what becomes of it where the disk fails or
// another program writes at that very moment. The calls of the system that decide it are met here.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "forecourse/server/desk/desk.h"
#include "forecourse/site/edit.h"
#include "server/scratch.h"

namespace forecourse::server {
namespace {

namespace fs = std::filesystem;

/// What a test makes of the calls; null: they go to the system.
struct Disk {
  std::vector<std::string> calls;
  std::string failing;                    ///< files whose names begin so cannot be put on the disk
  bool exchanges = true;                  ///< false: the file system cannot exchange two files
  std::function<void()> before_exchange;  ///< once
  std::function<void()> before_journal;   ///< once
};

Disk* disk = nullptr;

std::string name_of(int file) { return fs::read_symlink("/proc/self/fd/" + std::to_string(file)).filename().string(); }

void once(std::function<void()>& what) {
  if (const auto now = std::exchange(what, nullptr)) now();
}

int met_fsync(int file) {
  const std::string name = name_of(file);
  disk->calls.push_back("sync " + name);
  if (name.ends_with(".journal")) once(disk->before_journal);
  const bool fails = !disk->failing.empty() && name.starts_with(disk->failing);
  if (fails) errno = EIO;
  return fails ? -1 : 0;
}

bool met_exchange() {
  disk->calls.emplace_back("exchange");
  once(disk->before_exchange);
  if (!disk->exchanges) errno = EINVAL;
  return disk->exchanges;
}

}  // namespace
}  // namespace forecourse::server

extern "C" int fsync(int file) {
  if (forecourse::server::disk != nullptr && forecourse::server::met_fsync(file) != 0) return -1;
  return static_cast<int>(syscall(SYS_fsync, file));
}

extern "C" int renameat2(int from_folder, const char* from, int to_folder, const char* to, unsigned flags) noexcept {
  if (forecourse::server::disk != nullptr && !forecourse::server::met_exchange()) return -1;
  return static_cast<int>(syscall(SYS_renameat2, from_folder, from, to_folder, to, flags));
}

namespace forecourse::server {
namespace {

const char* const bore = "line.trunk.bore";
const char* const other_bore = "line.gap-1.bore";

class SaveTest : public testing::Test {
 protected:
  void SetUp() override {
    path = copy_of_site_s(std::string("save-") + testing::UnitTest::GetInstance()->current_test_info()->name());
    before = file_text(path);
    ASSERT_EQ(desk.open_path(path), "");
    disk = &met;
  }
  void TearDown() override {
    disk = nullptr;
    fs::remove_all(fs::path(path).parent_path());
  }

  Outcome set_bore(const std::string& to) { return desk.edit(desk.facts().revision, "bore", {{bore, to, false, {}}}); }
  [[nodiscard]] std::string value(const std::string& at) const { return site::value_at(file_text(path), at).value; }
  void others_set(const std::string& at) const { write_outside(path, site::set_value(before, at, "4 in").value); }

  Disk met;
  std::string path;
  std::string before;
  std::vector<std::string> told;
  Desk desk{[this](int, const char* why) { told.emplace_back(why); }};
};

TEST_F(SaveTest, TextFolderAndJournalAreOnTheDiskBeforeTheAnswer) {
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  const std::string folder = fs::path(path).parent_path().filename().string();
  EXPECT_EQ(met.calls, (std::vector<std::string>{"sync .site-s.toml.saving", "exchange", "sync " + folder,
                                                 "sync .site-s.toml.journal"}));
}

TEST_F(SaveTest, ATextThatCannotBePutOnTheDiskIsNotSaved) {
  met.failing = ".site-s.toml.saving";
  EXPECT_EQ(set_bore("3 in").refusal, Refusal::failed);
  EXPECT_EQ(file_text(path), before);
  EXPECT_EQ(desk.facts().text, before);
  EXPECT_FALSE(fs::exists(beside(path, ".saving")));
}

TEST_F(SaveTest, WhatCannotBeUndoneIsNotDone) {
  met.failing = ".site-s.toml.journal";
  const Outcome failed = set_bore("3 in");
  EXPECT_EQ(failed.refusal, Refusal::failed);
  EXPECT_EQ(file_text(path), before);
  EXPECT_EQ(failed.facts.text, before);
  EXPECT_EQ(failed.facts.undo, "");
  met.failing.clear();
  ASSERT_EQ(set_bore("5 in").refusal, Refusal::none);
  EXPECT_EQ(desk.undo(desk.facts().revision).facts.text, before);
}

/// On file systems that can exchange two files, and on those that cannot.
class MomentTest : public SaveTest, public testing::WithParamInterface<bool> {
 protected:
  void SetUp() override {
    SaveTest::SetUp();
    met.exchanges = GetParam();
  }
};

TEST_P(MomentTest, AnotherValueWrittenAtThatMomentStays) {
  met.before_exchange = [this] { others_set(other_bore); };
  EXPECT_EQ(set_bore("3 in").refusal, Refusal::none);
  EXPECT_EQ(value(bore), "\"3 in\"");
  EXPECT_EQ(value(other_bore), "\"4 in\"");
  EXPECT_EQ(told, (std::vector<std::string>{"outside", "edit"}));
}

TEST_P(MomentTest, TheSameValueWrittenAtThatMomentStays) {
  met.before_exchange = [this] { others_set(bore); };
  EXPECT_EQ(set_bore("3 in").refusal, Refusal::stale);
  EXPECT_EQ(value(bore), "\"4 in\"");
  EXPECT_FALSE(fs::exists(beside(path, ".saving")));
}

TEST_P(MomentTest, WhatIsWrittenRightAfterItIsNoticed) {
  met.before_journal = [this] { others_set(other_bore); };
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  desk.look();
  desk.look();
  EXPECT_EQ(desk.facts().text, file_text(path));
  EXPECT_EQ(told, (std::vector<std::string>{"edit", "outside"}));
}

INSTANTIATE_TEST_SUITE_P(ExchangesOrNot, MomentTest, testing::Bool());

}  // namespace
}  // namespace forecourse::server
