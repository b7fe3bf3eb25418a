// The open site file: edits, undo over a restart, what others write into it, names.
#include "forecourse/server/desk/desk.h"

#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <string>
#include <vector>

#include "forecourse/server/desk/site_name.h"
#include "forecourse/server/desk/templates.h"
#include "forecourse/site/edit.h"
#include "forecourse/site/read.h"
#include "server/scratch.h"

namespace forecourse::server {
namespace {

namespace fs = std::filesystem;

const char* const bore = "line.trunk.bore";

Edit set(const std::string& path, const std::string& value) { return {path, value, false, {}}; }

std::string value(const std::string& text, const std::string& path) { return site::value_at(text, path).value; }

class DeskTest : public testing::Test {
 protected:
  void SetUp() override {
    path = copy_of_site_s(std::string("desk-") + testing::UnitTest::GetInstance()->current_test_info()->name());
    ASSERT_EQ(desk->open_path(path), "");
  }
  void TearDown() override { fs::remove_all(fs::path(path).parent_path()); }

  /// As after a restart.
  void open_again() {
    desk.reset();
    desk = make_desk();
    ASSERT_EQ(desk->open_path(path), "");
  }

  std::unique_ptr<Desk> make_desk() {
    return std::make_unique<Desk>(
        [this](int revision, const char* why) { told.push_back(std::to_string(revision) + " " + why); });
  }

  int revision() { return desk->facts().revision; }
  Outcome set_bore(const std::string& to) { return desk->edit(revision(), "bore " + to, {set(bore, to)}); }

  std::vector<std::string> told;
  std::string path;
  std::unique_ptr<Desk> desk = make_desk();
};

TEST_F(DeskTest, AnEditIsInTheFile) {
  const Outcome outcome = set_bore("3 in");
  EXPECT_EQ(outcome.refusal, Refusal::none);
  EXPECT_EQ(file_text(path), outcome.facts.text);
  EXPECT_EQ(value(outcome.facts.text, bore), "\"3 in\"");
  EXPECT_EQ(outcome.facts.undo, "bore 3 in");
  EXPECT_EQ(outcome.facts.revision, 2);
  EXPECT_EQ(told, std::vector<std::string>{"2 edit"});
}

TEST_F(DeskTest, AnEditOfNothingIsNoStep) {
  const int before = revision();
  EXPECT_EQ(set_bore("2.00 in").refusal, Refusal::none);
  EXPECT_EQ(revision(), before);
  EXPECT_EQ(desk->facts().undo, "");
}

TEST_F(DeskTest, ARefusedEditChangesNothing) {
  const std::string before = file_text(path);
  const Outcome outcome = desk->edit(revision(), "wrong", {set(bore, "3 in"), set("line.nowhere.bore", "3 in")});
  EXPECT_EQ(outcome.refusal, Refusal::refused);
  EXPECT_FALSE(outcome.diagnostics.empty());
  EXPECT_FALSE(outcome.error.empty());
  EXPECT_EQ(file_text(path), before);
}

TEST_F(DeskTest, UndoAndRedoOutliveARestart) {
  const std::string first = file_text(path);
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  ASSERT_EQ(set_bore("4 in").refusal, Refusal::none);
  ASSERT_EQ(desk->undo(revision()).refusal, Refusal::none);
  const int before = revision();
  open_again();
  EXPECT_GE(revision(), before);
  EXPECT_EQ(desk->facts().redo, "bore 4 in");
  EXPECT_EQ(desk->undo(revision()).facts.text, first);
  EXPECT_EQ(file_text(path), first);
  EXPECT_EQ(desk->undo(revision()).refusal, Refusal::stale);
  ASSERT_EQ(desk->redo(revision()).refusal, Refusal::none);
  EXPECT_EQ(value(desk->redo(revision()).facts.text, bore), "\"4 in\"");
}

TEST_F(DeskTest, WhatOthersWroteMeanwhileIsAStep) {
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  const std::string ours = file_text(path);
  desk.reset();
  const std::string theirs = "# theirs\n" + ours;
  write_outside(path, theirs);
  open_again();
  EXPECT_EQ(desk->facts().text, theirs);
  EXPECT_EQ(desk->facts().undo, "changed outside");
  EXPECT_EQ(desk->undo(revision()).facts.text, ours);
}

TEST_F(DeskTest, AnOutsideEditIsNoticedWhenCalm) {
  const std::string theirs = file_text(path) + "# theirs\n";
  write_outside(path, theirs);
  desk->look();
  desk->look();
  EXPECT_EQ(desk->facts().text, theirs);
  EXPECT_EQ(told, std::vector<std::string>{"2 outside"});
  EXPECT_EQ(desk->facts().undo, "changed outside");
}

TEST_F(DeskTest, AnEditKeepsWhatOthersWroteElsewhere) {
  const int before = revision();
  write_outside(path, site::set_value(file_text(path), "line.gap-1.bore", "4 in").value + "# theirs\n");
  const Outcome outcome = desk->edit(before, "ours", {set(bore, "3 in")});
  EXPECT_EQ(outcome.refusal, Refusal::none);
  EXPECT_EQ(file_text(path), outcome.facts.text);
  EXPECT_EQ(value(outcome.facts.text, bore), "\"3 in\"");
  EXPECT_EQ(value(outcome.facts.text, "line.gap-1.bore"), "\"4 in\"");
  EXPECT_TRUE(outcome.facts.text.ends_with("# theirs\n"));
  EXPECT_EQ(told, (std::vector<std::string>{"2 outside", "3 edit"}));
}

TEST_F(DeskTest, AnEditOfWhatOthersChangedIsRefused) {
  const int before = revision();
  const std::string theirs = site::set_value(file_text(path), bore, "4 in").value;
  write_outside(path, theirs);
  const Outcome outcome = desk->edit(before, "ours", {set(bore, "3 in")});
  EXPECT_EQ(outcome.refusal, Refusal::stale);
  EXPECT_EQ(outcome.changed, std::vector<std::string>{bore});
  EXPECT_EQ(file_text(path), theirs);
  EXPECT_EQ(outcome.facts.text, theirs);
}

TEST_F(DeskTest, AnEditOfAPartThatOthersRemovedIsRefused) {
  const int before = revision();
  write_outside(path, site::remove_value(file_text(path), "incident.struck").value);
  write_outside(path, site::remove_value(file_text(path), "line.gap-2").value);
  const Outcome outcome = desk->edit(before, "ours", {set("line.gap-2.bore", "3 in")});
  EXPECT_EQ(outcome.refusal, Refusal::stale);
  EXPECT_FALSE(outcome.changed.empty());
}

TEST_F(DeskTest, TwoPagesEditDifferentValues) {
  const int both = revision();
  ASSERT_EQ(desk->edit(both, "first", {set(bore, "3 in")}).refusal, Refusal::none);
  const Outcome second = desk->edit(both, "second", {set("line.gap-1.bore", "4 in")});
  EXPECT_EQ(second.refusal, Refusal::none);
  EXPECT_EQ(value(second.facts.text, bore), "\"3 in\"");
  const Outcome third = desk->edit(both, "third", {set(bore, "5 in")});
  EXPECT_EQ(third.refusal, Refusal::stale);
  EXPECT_EQ(third.changed, (std::vector<std::string>{bore, "line.gap-1.bore"}));
}

TEST_F(DeskTest, AWholeTextAndAnUndoNeedTheNewestRevision) {
  const int old = revision();
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  EXPECT_EQ(desk->replace(old, "text", "format = 1\n").refusal, Refusal::stale);
  EXPECT_EQ(desk->undo(old).refusal, Refusal::stale);
  EXPECT_EQ(desk->replace(revision(), "text", "format = 1\n").refusal, Refusal::none);
  EXPECT_EQ(file_text(path), "format = 1\n");
}

TEST_F(DeskTest, ARevisionThatNeverWasIsStale) {
  EXPECT_EQ(desk->edit(revision() + 5, "future", {set(bore, "3 in")}).refusal, Refusal::stale);
  EXPECT_EQ(desk->edit(0, "before", {set(bore, "3 in")}).refusal, Refusal::stale);
}

TEST_F(DeskTest, AMarkAtTheBeginningAndTheModeStay) {
  const std::string text = file_text(path);
  write_outside(path, "\xEF\xBB\xBF" + text);
  ASSERT_EQ(chmod(path.c_str(), 0640), 0);
  open_again();
  EXPECT_EQ(desk->facts().text, text);
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  EXPECT_TRUE(file_text(path).starts_with("\xEF\xBB\xBF"));
  struct stat status {};
  ASSERT_EQ(stat(path.c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 07777U, 0640U);
}

TEST_F(DeskTest, ALinkLeadsToItsFile) {
  const std::string elsewhere = scratch_folder("linked");
  const std::string link = elsewhere + "/link.toml";
  fs::create_symlink(path, link);
  desk.reset();
  desk = make_desk();
  ASSERT_EQ(desk->open_path(link), "");
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  EXPECT_TRUE(fs::is_symlink(link));
  EXPECT_EQ(value(file_text(path), bore), "\"3 in\"");
  fs::remove_all(elsewhere);
}

TEST_F(DeskTest, ASecondWorkbenchOnlyLooks) {
  Desk second;
  ASSERT_EQ(second.open_path(path), "");
  EXPECT_FALSE(second.facts().editable);
  const Outcome outcome = second.edit(1, "two", {set(bore, "3 in")});
  EXPECT_EQ(outcome.refusal, Refusal::read_only);
  ASSERT_EQ(set_bore("4 in").refusal, Refusal::none);
  second.look();
  second.look();
  EXPECT_EQ(value(second.facts().text, bore), "\"4 in\"");
}

/// The superuser may write everything: as long as this lives, that one is nobody.
class OrdinaryUser {
 public:
  OrdinaryUser() : was_root_(geteuid() == 0) {
    if (was_root_) become(nobody);
  }
  ~OrdinaryUser() {
    if (was_root_) become(0);
  }
  OrdinaryUser(const OrdinaryUser&) = delete;
  OrdinaryUser& operator=(const OrdinaryUser&) = delete;

 private:
  static constexpr uid_t nobody = 65534;

  static void become(uid_t user) { EXPECT_EQ(setresuid(user, user, 0), 0); }

  bool was_root_;
};

TEST_F(DeskTest, AReadOnlyFileIsLookedAt) {
  desk.reset();
  ASSERT_EQ(chmod(path.c_str(), 0444), 0);
  ASSERT_EQ(chmod(fs::path(path).parent_path().c_str(), 0777), 0);
  const OrdinaryUser user;
  desk = make_desk();
  ASSERT_EQ(desk->open_path(path), "");
  EXPECT_FALSE(desk->facts().editable);
  EXPECT_EQ(set_bore("3 in").refusal, Refusal::read_only);
}

TEST_F(DeskTest, AFileThatIsGoneIsMadeAnew) {
  fs::remove(path);
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  EXPECT_EQ(value(file_text(path), bore), "\"3 in\"");
}

TEST_F(DeskTest, WhatAnInterruptedSaveLeftIsNoHindrance) {
  write_outside(beside(path, ".saving"), "half of a te");
  write_outside(beside(path, ".journal.new"), "half of a jour");
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  EXPECT_EQ(value(file_text(path), bore), "\"3 in\"");
  EXPECT_FALSE(fs::exists(beside(path, ".saving")));
}

TEST_F(DeskTest, TheJournalDoesNotGrowWithoutEnd) {
  const std::string filler(200'000, 'x');
  for (int i = 0; i < 60; ++i) {
    ASSERT_EQ(desk->replace(revision(), "text", "# " + std::to_string(i) + filler + "\nformat = 1\n").refusal,
              Refusal::none);
    ASSERT_EQ(desk->undo(revision()).refusal, Refusal::none);
  }
  EXPECT_LT(fs::file_size(beside(path, ".journal")), 3U << 20U);
}

TEST_F(DeskTest, AJournalThatIsALinkIsNotFollowed) {
  desk.reset();
  const std::string victim = scratch_folder("victim") + "/precious.txt";
  write_outside(victim, "precious");
  fs::remove(beside(path, ".journal"));
  fs::create_symlink(victim, beside(path, ".journal"));
  fs::create_symlink(victim, beside(path, ".saving"));
  desk = make_desk();
  ASSERT_EQ(desk->open_path(path), "");
  static_cast<void>(set_bore("3 in"));
  EXPECT_EQ(file_text(victim), "precious");
}

TEST_F(DeskTest, OpensSavesAndBeginsInTheFolder) {
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  const Outcome saved = desk->save_as("second one.toml");
  EXPECT_EQ(saved.refusal, Refusal::none);
  EXPECT_EQ(saved.facts.file, "second one.toml");
  EXPECT_EQ(saved.facts.undo, "");
  EXPECT_EQ(desk->save_as("site-s.toml").refusal, Refusal::there);
  EXPECT_EQ(desk->create("third.toml", "no such").refusal, Refusal::refused);
  EXPECT_EQ(desk->create("third.toml", "small-station").refusal, Refusal::none);
  EXPECT_EQ(desk->create("third.toml", "empty").refusal, Refusal::there);
  EXPECT_EQ(desk->open("none.toml").refusal, Refusal::not_there);
  EXPECT_EQ(desk->names(), (std::vector<std::string>{"second one.toml", "site-s.toml", "third.toml"}));
  const Outcome back = desk->open("site-s.toml");
  EXPECT_EQ(back.facts.undo, "bore 3 in");
  EXPECT_EQ(told.back(), std::to_string(back.facts.revision) + " opened");
  EXPECT_EQ(desk->edit(saved.facts.revision, "old", {set(bore, "5 in")}).refusal, Refusal::stale);
}

TEST_F(DeskTest, ANewFileDoesNotTakeTheUndoOfADeletedOne) {
  ASSERT_EQ(desk->save_as("other.toml").refusal, Refusal::none);
  ASSERT_EQ(set_bore("3 in").refusal, Refusal::none);
  ASSERT_EQ(desk->open("site-s.toml").refusal, Refusal::none);
  const std::string other = fs::path(path).replace_filename("other.toml").string();
  ASSERT_TRUE(fs::exists(beside(other, ".journal")));
  fs::remove(other);
  const Outcome saved = desk->save_as("other.toml");
  ASSERT_EQ(saved.refusal, Refusal::none);
  EXPECT_EQ(saved.facts.undo, "");
  EXPECT_EQ(desk->undo(revision()).refusal, Refusal::stale);
  ASSERT_EQ(desk->open("site-s.toml").refusal, Refusal::none);
  EXPECT_EQ(desk->open("other.toml").facts.undo, "");  // the journal on the disk is a fresh one too
}

TEST_F(DeskTest, ALinkOutOfTheFolderIsNotOpened) {
  const std::string elsewhere = scratch_folder("elsewhere") + "/other.toml";
  write_outside(elsewhere, "format = 1\n");
  fs::create_symlink(elsewhere, fs::path(path).parent_path() / "leads-out.toml");
  fs::create_symlink("nowhere.toml", fs::path(path).parent_path() / "dangling.toml");
  EXPECT_EQ(desk->open("leads-out.toml").refusal, Refusal::refused);
  EXPECT_EQ(desk->save_as("dangling.toml").refusal, Refusal::there);
  EXPECT_FALSE(fs::exists(fs::path(path).parent_path() / "nowhere.toml"));
}

class WrongName : public testing::TestWithParam<const char*> {};

TEST_P(WrongName, IsTold) { EXPECT_NE(wrong_name(GetParam()), ""); }

INSTANTIATE_TEST_SUITE_P(
    All, WrongName,
    testing::Values(
        "", ".toml", "..toml", "a", "a.txt", "../a.toml", "..\\a.toml", "/tmp/a.toml", "\\a.toml", "C:\\a.toml",
        "%2e%2e%2fa.toml", "%252e%252e%252fa.toml", "a/b.toml", "a/../../b.toml", ".hidden.toml", " a.toml", "a\n.toml",
        "a\r\n.toml", "a\t.toml", "a;b.toml", "$(id).toml", "a|b.toml", "a\x7f.toml", "a.toml/", "a.toml\\", "..",
        "../.toml",
        "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa.toml"));

TEST(SiteName, ANulByteIsTold) { EXPECT_NE(wrong_name(std::string("a\0b.toml", 8)), ""); }

TEST(SiteName, PlainNamesAreTaken) {
  for (const char* name : {"a.toml", "My station 2.toml", "a..b.toml", "größe.toml", "a-b_c.toml"}) {
    EXPECT_EQ(wrong_name(name), "") << name;
  }
}

TEST(Templates, CanBeRead) {
  const std::vector<Template> templates = site_templates();
  ASSERT_EQ(templates.size(), 2U);
  EXPECT_EQ(templates[0].id, "empty");
  EXPECT_EQ(templates[1].id, "small-station");
  EXPECT_TRUE(site::read_site(templates[1].text).diagnostics.empty());
  EXPECT_EQ(site::read_site(templates[1].text).value.dispensers.size(), 2U);
}

}  // namespace
}  // namespace forecourse::server
