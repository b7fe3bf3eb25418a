// Long studies: that they are told, stopped, limited and forgotten, and that a fault in one ends nothing else.
#include "forecourse/server/http/runs.h"

#include <gtest/gtest.h>

#include <chrono>
#include <mutex>
#include <stdexcept>
#include <thread>
#include <vector>

namespace forecourse::server {
namespace {

using namespace std::chrono_literals;
using report::Json;

class RunsTest : public testing::Test {
 protected:
  /// The state of a run once it is done.
  Json ended(int number) {
    Json state;
    for (int i = 0; i < 5000; ++i) {  // 5 s, of what takes a millisecond
      state = runs.state(number);
      if (state.is_null() || state["done"] == true) break;
      std::this_thread::sleep_for(1ms);
    }
    return state;
  }

  /// Goes on until it is told to stop.
  static Json endless(const Context& context) {
    while (!context.cancelled()) std::this_thread::sleep_for(1ms);
    return "stopped";
  }

  std::mutex mutex;
  std::vector<Json> told;
  Runs runs{[this](const Json& json) {
    const std::lock_guard lock(mutex);
    told.push_back(json);
  }};
};

TEST_F(RunsTest, TellsProgressAndTheEnd) {
  const auto number = runs.start([](const Context& context) {
    context.progress(0.25);
    context.progress(0.5);  // too soon after the first to be told
    return Json("answer");
  });
  ASSERT_TRUE(number);
  EXPECT_EQ(ended(*number), Json({{"share", 1.0}, {"done", true}, {"cancelled", false}, {"answer", "answer"}}));
  runs.stop();
  EXPECT_EQ(told, (std::vector<Json>{{{"run", *number}, {"share", 0.25}, {"done", false}},
                                     {{"run", *number}, {"share", 1.0}, {"done", true}}}));
}

TEST_F(RunsTest, AStoppedRunEnds) {
  const auto number = runs.start(endless);
  ASSERT_TRUE(number);
  EXPECT_EQ(runs.state(*number)["done"], false);
  EXPECT_TRUE(runs.cancel(*number));
  const Json state = ended(*number);
  EXPECT_EQ(state["answer"], "stopped");
  EXPECT_EQ(state["cancelled"], true);
  EXPECT_EQ(state["share"], 0.0);
  EXPECT_FALSE(runs.cancel(*number + 1));
  EXPECT_TRUE(runs.state(*number + 1).is_null());
}

TEST_F(RunsTest, NoMoreThanFourGoAtOnce) {
  for (int i = 0; i < Runs::most_at_once; ++i) ASSERT_TRUE(runs.start(endless));
  EXPECT_FALSE(runs.start(endless));
  ASSERT_TRUE(runs.cancel(1));
  ASSERT_EQ(ended(1)["done"], true);
  EXPECT_TRUE(runs.start(endless));
}

TEST_F(RunsTest, TheOldestAnswersAreForgottenAndNoneThatGoes) {
  const auto going = runs.start(endless);
  ASSERT_TRUE(going);
  for (int i = 0; i < 30; ++i) {
    const auto number = runs.start([](const Context&) { return Json("answer"); });
    ASSERT_TRUE(number);
    ASSERT_EQ(ended(*number)["done"], true);
  }
  EXPECT_EQ(runs.state(*going)["done"], false);
  EXPECT_TRUE(runs.state(*going + 1).is_null());
  EXPECT_EQ(runs.state(*going + 30)["answer"], "answer");
}

TEST_F(RunsTest, AFaultInOneIsItsAnswer) {
  const auto number = runs.start([](const Context&) -> Json { throw std::runtime_error("broken"); });
  ASSERT_TRUE(number);
  EXPECT_TRUE(ended(*number)["answer"].contains("error"));
}

}  // namespace
}  // namespace forecourse::server
