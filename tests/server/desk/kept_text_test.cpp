// What can be undone, and how a journal tells it again.
#include "forecourse/server/desk/kept_text.h"

#include <gtest/gtest.h>

#include <random>
#include <string>

#include "forecourse/server/desk/journal_line.h"

namespace forecourse::server {
namespace {

Move step_to(const KeptText& kept, const std::string& text, const std::string& label = "edit") {
  return {Move::Kind::step, {label, change_between(kept.text, text)}};
}

TEST(Change, GoesThereAndBack) {
  std::mt19937 random(7);
  for (int round = 0; round < 2000; ++round) {
    std::string a;
    std::string b;
    for (std::size_t i = random() % 12; i > 0; --i) a += static_cast<char>('a' + random() % 3);
    for (std::size_t i = random() % 12; i > 0; --i) b += static_cast<char>('a' + random() % 3);
    const Change change = change_between(a, b);
    EXPECT_EQ(forward(change, a), b);
    EXPECT_EQ(backward(change, b), a);
  }
}

TEST(Change, IsTheShortest) {
  const Change change = change_between("bore = \"2 in\"", "bore = \"3 in\"");
  EXPECT_EQ(change.out, "2");
  EXPECT_EQ(change.in, "3");
  EXPECT_EQ(change.at, 8U);
}

TEST(Change, RefusesATextThatItDoesNotFit) {
  EXPECT_FALSE(forward({5, "x", "y"}, "abc"));
  EXPECT_FALSE(forward({1, "x", "y"}, "abc"));
}

TEST(KeptText, UndoesAndRedoes) {
  KeptText kept{"one", 1, {}, 0};
  ASSERT_TRUE(make(kept, step_to(kept, "two", "to two")));
  ASSERT_TRUE(make(kept, step_to(kept, "three", "to three")));
  EXPECT_EQ(undoable(kept)->label, "to three");
  EXPECT_TRUE(make(kept, {Move::Kind::undo, {}}));
  EXPECT_EQ(kept.text, "two");
  EXPECT_EQ(redoable(kept)->label, "to three");
  EXPECT_TRUE(make(kept, {Move::Kind::undo, {}}));
  EXPECT_FALSE(make(kept, {Move::Kind::undo, {}}));
  EXPECT_TRUE(make(kept, {Move::Kind::redo, {}}));
  EXPECT_EQ(kept.text, "two");
  EXPECT_EQ(kept.revision, 6);
}

TEST(KeptText, AStepEndsWhatCouldBeRedone) {
  KeptText kept{"one", 1, {}, 0};
  ASSERT_TRUE(make(kept, step_to(kept, "two")));
  ASSERT_TRUE(make(kept, {Move::Kind::undo, {}}));
  ASSERT_TRUE(make(kept, step_to(kept, "three")));
  EXPECT_EQ(redoable(kept), nullptr);
  EXPECT_FALSE(make(kept, {Move::Kind::redo, {}}));
}

TEST(KeptText, KeepsTwoHundredSteps) {
  KeptText kept{"", 1, {}, 0};
  for (int i = 0; i < 250; ++i) ASSERT_TRUE(make(kept, step_to(kept, std::to_string(i))));
  for (int i = 0; i < 200; ++i) ASSERT_TRUE(make(kept, {Move::Kind::undo, {}}));
  EXPECT_EQ(kept.text, "49");
  EXPECT_FALSE(make(kept, {Move::Kind::undo, {}}));
}

TEST(KeptText, ForgetsTheOldestOfLargeSteps) {
  KeptText kept{"", 1, {}, 0};
  for (int i = 0; i < 10; ++i)
    ASSERT_TRUE(make(kept, step_to(kept, std::string(3U << 20U, static_cast<char>('a' + i)))));
  std::size_t size = 0;
  for (const Step& step : kept.steps) size += step.change.in.size() + step.change.out.size();
  EXPECT_LE(size, largest_history);
  EXPECT_NE(undoable(kept), nullptr);
}

/// A text of any bytes, as no editor writes it.
std::string any_bytes(std::mt19937& random) {
  std::string bytes;
  for (std::size_t i = random() % 40; i > 0; --i) bytes += static_cast<char>(random() % 256);
  return bytes;
}

TEST(JournalLine, TellsAnyTextAgain) {
  std::mt19937 random(11);
  KeptText kept{any_bytes(random), 5, {}, 0};
  std::string journal = journal_line(kept);
  for (int i = 0; i < 300; ++i) {
    Move move{static_cast<Move::Kind>(random() % 3), {}};
    if (move.kind == Move::Kind::step) move = step_to(kept, any_bytes(random), any_bytes(random));
    if (make(kept, move)) journal += journal_line(move);
    const std::optional<KeptText> read = read_journal(journal);
    ASSERT_TRUE(read);
    ASSERT_EQ(read->text, kept.text);
    ASSERT_EQ(read->revision, kept.revision);
    ASSERT_EQ(read->done, kept.done);
    ASSERT_EQ(read_journal(journal_line(kept))->text, kept.text);
  }
}

TEST(JournalLine, ATornEndTakesNothingElseWithIt) {
  KeptText kept{"one", 1, {}, 0};
  const std::string first = journal_line(kept);
  const Move move = step_to(kept, "two");
  const std::string second = journal_line(move);
  for (std::size_t cut = 0; cut < second.size(); ++cut) {
    const std::optional<KeptText> read = read_journal(first + second.substr(0, cut));
    ASSERT_TRUE(read);
    EXPECT_EQ(read->text, "one") << cut;
  }
  EXPECT_EQ(read_journal(first + second)->text, "two");
  EXPECT_FALSE(read_journal(first.substr(0, first.size() - 1)));
}

TEST(JournalLine, AChangedByteEndsIt) {
  KeptText kept{"one", 1, {}, 0};
  const std::string first = journal_line(kept);
  const std::string second = journal_line(step_to(kept, "two"));
  for (std::size_t at = 0; at + 1 < second.size(); ++at) {
    std::string changed = second;
    changed[at] = static_cast<char>(changed[at] ^ 1);
    EXPECT_EQ(read_journal(first + changed)->text, "one") << at;
  }
}

}  // namespace
}  // namespace forecourse::server
