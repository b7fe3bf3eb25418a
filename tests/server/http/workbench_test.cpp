// The workbench as a page sees it: routes, events, runs, the files of the page.
#include "forecourse/server/http/workbench.h"

#include <gtest/gtest.h>

#include <fstream>
#include <thread>
#include <vector>

#include "forecourse/server/http/assets.h"
#include "forecourse/server/http/route.h"
#include "server/http/running.h"

namespace forecourse::server {
namespace {

using namespace std::chrono_literals;
using nlohmann::json;

class WorkbenchTest : public Running {};

TEST_F(WorkbenchTest, ServesTheStation) {
  const Response response = get("/api/station");
  EXPECT_EQ(response.status, 200);
  EXPECT_EQ(response.headers.at("content-type"), "application/json");
  EXPECT_EQ(response.headers.at("cache-control"), "no-store");
  const json got = json::parse(response.body);
  EXPECT_EQ(got["revision"], 1);
  EXPECT_EQ(got["file"], "site-s.toml");
  EXPECT_EQ(got["text"], file_text(site));
  EXPECT_EQ(got["editable"], true);
}

TEST_F(WorkbenchTest, EditsUndoesAndRedoes) {
  const Response edited = set_bore(1, "3 in");
  ASSERT_EQ(edited.status, 200) << edited.body;
  EXPECT_EQ(json::parse(edited.body)["undo"], "bore");
  EXPECT_NE(file_text(site).find("bore = \"3 in\""), std::string::npos);
  EXPECT_EQ(send("/api/undo", {{"revision", 2}}).status, 200);
  EXPECT_EQ(file_text(site).find("bore = \"3 in\""), std::string::npos);
  EXPECT_EQ(send("/api/undo", {{"revision", 3}}).status, 409);
  EXPECT_EQ(send("/api/redo", {{"revision", 3}}).status, 200);
  EXPECT_NE(file_text(site).find("bore = \"3 in\""), std::string::npos);
}

TEST_F(WorkbenchTest, AStaleEditIsToldWhatChanged) {
  ASSERT_EQ(set_bore(1, "3 in").status, 200);
  const Response second = set_bore(1, "4 in");
  EXPECT_EQ(second.status, 409);
  const json told = json::parse(second.body);
  EXPECT_EQ(told["changed"], json::array({"line.trunk.bore"}));
  EXPECT_EQ(told["station"]["revision"], 2);
  EXPECT_EQ(json::parse(set_bore(2, "4 in").body)["revision"], 3);
}

TEST_F(WorkbenchTest, ARefusedEditSaysWhy) {
  const Response response = set_bore(1, "3 psi");
  EXPECT_EQ(response.status, 422);
  const json told = json::parse(response.body);
  EXPECT_FALSE(told["error"].get<std::string>().empty());
  EXPECT_FALSE(told["diagnostics"].empty());
  EXPECT_EQ(told["station"]["revision"], 1);
}

TEST_F(WorkbenchTest, AnswersWantsOnACopy) {
  const std::string before = file_text(site);
  const Response response = send("/api/ask", {{"wants", {{{"study", "flow"}, {"open", "all"}}, {{"study", "none"}}}},
                                              {"edits", {{{"path", "line.trunk.bore"}, {"value", "3 in"}}}}});
  ASSERT_EQ(response.status, 200) << response.body;
  const json got = json::parse(response.body);
  EXPECT_EQ(got["revision"], 1);
  ASSERT_EQ(got["answers"].size(), 2U);
  EXPECT_TRUE(got["answers"][0].contains("document"));
  EXPECT_TRUE(got["answers"][1].contains("error"));
  EXPECT_EQ(file_text(site), before);
  EXPECT_EQ(send("/api/ask", {{"wants", json::array()}, {"edits", {{{"path", "no.where"}, {"value", "1"}}}}}).status,
            422);
}

TEST_F(WorkbenchTest, TellsEditsToAllPages) {
  const Socket first(port());
  const Socket second(port());
  for (const Socket* page : {&first, &second}) {
    page->send(request(port(), "GET", "/api/events"));
    EXPECT_NE(page->read_until(": here", 5s).find("text/event-stream"), std::string::npos);
  }
  ASSERT_EQ(set_bore(1, "3 in").status, 200);
  for (const Socket* page : {&first, &second}) {
    const std::string told = page->read_until("\n\n", 5s);
    EXPECT_NE(told.find("event: station\ndata: {\"revision\":2,\"why\":\"edit\"}"), std::string::npos) << told;
  }
  write_outside(site, file_text(site) + "# theirs\n");
  EXPECT_NE(first.read_until("outside", 5s).find("{\"revision\":3,\"why\":\"outside\"}"), std::string::npos);
}

TEST_F(WorkbenchTest, RunsALongWant) {
  const Response started =
      send("/api/runs", {{"revision", 1}, {"want", {{"study", "flow"}, {"open", "each"}}}, {"edits", json::array()}});
  ASSERT_EQ(started.status, 200) << started.body;
  const std::string path = "/api/runs/" + std::to_string(json::parse(started.body)["run"].get<int>());
  json state = json::object();
  for (int i = 0; i < 600 && !state.value("done", false); ++i) {
    std::this_thread::sleep_for(50ms);
    state = json::parse(get(path).body);
  }
  EXPECT_EQ(state["done"], true);
  EXPECT_EQ(state["share"], 1.0);
  EXPECT_TRUE(state["answer"].contains("document")) << state;
  EXPECT_EQ(get("/api/runs/77").status, 404);
  EXPECT_EQ(get("/api/runs/-1").status, 404);
  EXPECT_EQ(get("/api/runs/99999999999999999999").status, 404);
  EXPECT_EQ(get("/api/runs/1/2").status, 404);
}

TEST_F(WorkbenchTest, ARunIsOfTheNewestTextAndCanBeStopped) {
  const json wanted{{"revision", 1}, {"want", {{"study", "flow"}, {"open", "each"}}}};
  ASSERT_EQ(set_bore(1, "3 in").status, 200);
  EXPECT_EQ(send("/api/runs", wanted).status, 409);
  json of_newest = wanted;
  of_newest["revision"] = 2;
  const int run = json::parse(send("/api/runs", of_newest).body)["run"].get<int>();
  const auto stop = [this](int number) {
    return answer_to(port(), request(port(), "DELETE", "/api/runs/" + std::to_string(number),
                                     "X-Forecourse-Key: " + key() + "\r\n"))
        .status;
  };
  EXPECT_EQ(stop(run), 200);
  EXPECT_EQ(stop(run + 1), 404);
}

TEST_F(WorkbenchTest, OpensBeginsAndLists) {
  EXPECT_EQ(send("/api/new", {{"name", "new.toml"}, {"template", "small-station"}}).status, 200);
  EXPECT_EQ(station()["file"], "new.toml");
  EXPECT_EQ(send("/api/save-as", {{"name", "copy.toml"}}).status, 200);
  EXPECT_EQ(send("/api/save-as", {{"name", "new.toml"}}).status, 409);
  EXPECT_EQ(send("/api/open", {{"name", "site-s.toml"}}).status, 200);
  EXPECT_EQ(send("/api/open", {{"name", "none.toml"}}).status, 404);
  const json sites = json::parse(get("/api/sites").body);
  EXPECT_EQ(sites["names"], json::array({"copy.toml", "new.toml", "site-s.toml"}));
  EXPECT_EQ(sites["templates"].size(), 2U);
}

TEST_F(WorkbenchTest, ADispatchNobodyKnowsIsTold) {
  EXPECT_EQ(get("/api/none").status, 404);
  EXPECT_EQ(get("/api/edit").status, 405);
  EXPECT_EQ(get("/api/edit").headers.at("allow"), "POST");
  EXPECT_EQ(answer_to(port(), request(port(), "PUT", "/api/station")).status, 405);
  EXPECT_EQ(answer_to(port(), request(port(), "OPTIONS", "/api/edit")).status, 405);
}

TEST_F(WorkbenchTest, AConnectionServesManyRequestsAtOnce) {
  const Socket socket(port());
  const auto begin = std::chrono::steady_clock::now();
  for (int i = 0; i < 200; ++i) {
    socket.send(request(port(), "GET", "/api/sites"));
    ASSERT_EQ(read_answer(socket).status, 200) << i;
  }
  EXPECT_LT(std::chrono::steady_clock::now() - begin, 4s);  // 45 ms each where the system waits for more to send
}

TEST_F(WorkbenchTest, EndsWithOpenStreams) {
  std::vector<Socket> pages;
  for (int i = 0; i < 20; ++i) {
    pages.emplace_back(port());
    pages.back().send(request(port(), "GET", "/api/events"));
    static_cast<void>(pages.back().read_until(": here", 5s));
  }
  const Socket idle(port());
  const auto begin = std::chrono::steady_clock::now();
  workbench.reset();
  EXPECT_LT(std::chrono::steady_clock::now() - begin, 2s);
}

TEST_F(WorkbenchTest, TwoNeverShareAPort) {
  Workbench second({site, port(), web});
  EXPECT_NE(second.start(), "");
}

TEST_F(WorkbenchTest, WithoutAPageItSaysHowToBuildOne) {
  const Response response = get("/");
  EXPECT_EQ(response.status, 200);
  EXPECT_NE(response.body.find("npm run build"), std::string::npos);
}

class PageTest : public Running {
 protected:
  void SetUp() override {
    web = scratch_folder("web");
    std::filesystem::create_directories(web + "/assets");
    write_outside(web + "/index.html", "<!doctype html>page");
    write_outside(web + "/assets/index-1a2b.js", std::string(5000, 'a'));
    write_outside(web + "/../beside.txt", "beside the page");
    std::filesystem::create_symlink("/etc/hostname", web + "/link.txt");
    Running::SetUp();
  }
  void TearDown() override {
    Running::TearDown();
    std::filesystem::remove_all(web);
  }
};

TEST_F(PageTest, SendsItsFiles) {
  const Response page = get("/");
  EXPECT_EQ(page.body, "<!doctype html>page");
  EXPECT_EQ(page.headers.at("cache-control"), "no-cache");
  EXPECT_EQ(page.headers.at("x-content-type-options"), "nosniff");
  EXPECT_EQ(page.headers.at("referrer-policy"), "no-referrer");
  EXPECT_EQ(page.headers.at("cross-origin-resource-policy"), "same-origin");
  EXPECT_NE(page.headers.at("content-security-policy").find("frame-ancestors 'none'"), std::string::npos);
  const Response script = get("/assets/index-1a2b.js");
  EXPECT_EQ(script.body.size(), 5000U);
  EXPECT_NE(script.headers.at("cache-control").find("immutable"), std::string::npos);
  EXPECT_EQ(get("/link.txt").status, 404);
  EXPECT_EQ(get("/none.js").status, 404);
}

TEST_F(PageTest, SendsThemSmallerAndOnlyOnce) {
  const Response small = get("/assets/index-1a2b.js", "Accept-Encoding: gzip, br\r\n");
  EXPECT_EQ(small.headers.at("content-encoding"), "gzip");
  EXPECT_LT(small.body.size(), 200U);
  const Response again = get("/assets/index-1a2b.js", "If-None-Match: " + small.headers.at("etag") + "\r\n");
  EXPECT_EQ(again.status, 304);
  EXPECT_EQ(again.body, "");
}

TEST_F(PageTest, APathNeverLeadsToTheDisk) {
  for (const char* path : {"/../beside.txt",
                           "/%2e%2e/beside.txt",
                           "/%252e%252e/beside.txt",
                           "/..%2fbeside.txt",
                           "/..%5cbeside.txt",
                           "/..\\beside.txt",
                           "//beside.txt",
                           "/./index.html/../../beside.txt",
                           "/assets/../../beside.txt",
                           "/assets/%2e%2e/%2e%2e/beside.txt",
                           "/etc/passwd",
                           "//etc/passwd",
                           "/%2fetc%2fpasswd",
                           "file:///etc/passwd",
                           "/link.txt",
                           "/....//beside.txt",
                           "/%c0%ae%c0%ae/beside.txt",
                           "/index.html%00.txt",
                           "/assets/",
                           "/assets"}) {
    const Response response = get(path);
    EXPECT_GE(response.status, 400) << path;
    EXPECT_EQ(response.body.find("beside the page"), std::string::npos) << path;
    EXPECT_EQ(response.body.find("root:"), std::string::npos) << path;
  }
}

}  // namespace
}  // namespace forecourse::server
