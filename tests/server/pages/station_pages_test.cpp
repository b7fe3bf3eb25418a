// Reports as the server makes them: what can be chosen, what is refused, and how.
#include "forecourse/server/pages/station_pages.h"

#include <gtest/gtest.h>

#include <cstdlib>

#include "forecourse/server/pages/shell_word.h"
#include "support/stations.h"

namespace forecourse::server {
namespace {

using report::Json;

class Pages : public testing::Test {
 protected:
  Reply report(const Json& asked) { return pages_.report(text_, "site-s.toml", asked); }

  StationPages pages_;
  std::string text_ = test::site_text("site-s");
};

TEST_F(Pages, TellsWhatCanBeChosenAndWhyNot) {
  const Reply reply = pages_.sections(text_, "site-s.toml");
  ASSERT_EQ(reply.status, 200);
  const Json json = Json::parse(reply.body);
  bool flow = false;
  for (const Json& section : json["sections"]) {
    EXPECT_EQ(section["why_not"].is_null(), section["has_content"].get<bool>()) << section["id"];
    flow = flow || (section["id"] == "flow" && section["has_content"] == true);
  }
  EXPECT_TRUE(flow);
  EXPECT_EQ(json["cells"][0]["name"], "station");
  EXPECT_EQ(json["pdf"]["available"].get<bool>(), json["pdf"]["hint"].is_null());
}

TEST_F(Pages, WritesThePageInTheUnitsAsked) {
  const Reply us = report({{"sections", {"flow"}}, {"units", "us"}});
  const Reply si = report({{"sections", {"flow"}}, {"units", "si"}});
  EXPECT_EQ(us.type, "text/html");
  EXPECT_NE(us.body.find("gpm"), std::string::npos);
  EXPECT_EQ(si.body.find("gpm"), std::string::npos);
}

TEST_F(Pages, ShowsThePageAsItGoesOnPaper) {
  const std::string letter = report({{"sections", {"flow"}}, {"format", "paper"}, {"paper", "letter"}}).body;
  EXPECT_NE(letter.find("@page{size:letter}"), std::string::npos);
  const std::string screen = report({{"sections", {"flow"}}, {"paper", "letter"}}).body;
  EXPECT_EQ(screen.find("@page{size:letter}"), std::string::npos);
}

TEST_F(Pages, ShowsTheCommandThatMakesTheSamePage) {
  const std::string html =
      report({{"sections", {"again"}}, {"units", "si"}, {"cells", {{"client", "It's ours"}}}}).body;
  EXPECT_NE(html.find("forecourse study site-s.toml --out out/site-s --units si --sections again --cell"),
            std::string::npos);
}

TEST(ShellWord, IsQuotedWhereAShellWouldReadMoreIntoIt) {
  EXPECT_EQ(shell_word("sites/site-s.toml"), "sites/site-s.toml");
  EXPECT_EQ(shell_word("line.trunk.bore=3 in"), "'line.trunk.bore=3 in'");
  EXPECT_EQ(shell_word("It's"), "'It'\\''s'");
  for (const char* word : {"", "$(id)", "`id`", "a;b", "hose.*.limiter", "a\nb", "~", "#1", "{a,b}", "a\"b", "!1"}) {
    EXPECT_EQ(shell_word(word), "'" + std::string(word) + "'");
  }
}

TEST_F(Pages, RefusesWhatIsNotThere) {
  for (const Json& asked :
       {Json{{"sections", {"flwo"}}}, Json{{"cells", {{"clint", "x"}}}}, Json{{"cells", {{"client", 3}}}},
        Json{{"cells", {"x"}}}, Json{{"format", "docx"}}, Json{{"secions", {"flow"}}}, Json(nullptr)}) {
    const Reply reply = report(asked);
    EXPECT_EQ(reply.status, 400) << asked;
    EXPECT_FALSE(Json::parse(reply.body)["error"].get<std::string>().empty()) << asked;
  }
}

TEST_F(Pages, RefusesATextThatCannotBeStudied) {
  EXPECT_EQ(pages_.sections("format = ", "x.toml").status, 422);
  EXPECT_EQ(pages_.report("format = ", "x.toml", Json::object()).status, 422);
  EXPECT_EQ(report({{"sections", {"flow"}}}).status, 200);  // and goes on with the next
}

TEST_F(Pages, SaysWhatToInstallForAPdf) {
  const char* path = std::getenv("PATH");
  const std::string before = path == nullptr ? "" : path;
  setenv("PATH", "/nowhere", 1);
  const Reply reply = report({{"sections", {"flow"}}, {"format", "pdf"}});
  const Json choices = Json::parse(pages_.sections(text_, "site-s.toml").body);
  setenv("PATH", before.c_str(), 1);
  EXPECT_EQ(reply.status, 503);
  EXPECT_NE(Json::parse(reply.body)["hint"].get<std::string>().find("weasyprint"), std::string::npos);
  EXPECT_EQ(choices["pdf"]["available"], false);
}

}  // namespace
}  // namespace forecourse::server
