// Foreign pages, wrong keys, hostile bodies, names and clients: none of them reads, writes or stalls anything.
#include <gtest/gtest.h>

#include <random>
#include <thread>
#include <vector>

#include "forecourse/server/http/body.h"
#include "forecourse/server/http/loopback/guards.h"
#include "server/http/running.h"

namespace forecourse::server {
namespace {

using namespace std::chrono_literals;
using nlohmann::json;

class Security : public Running {
 protected:
  /// A GET with a Host line of its own.
  [[nodiscard]] int status_for_host(const std::string& host) const {
    return answer_to(port(), "GET /api/station HTTP/1.1\r\n" + host + "\r\n").status;
  }
  [[nodiscard]] std::string undo_with(const std::string& headers) const {
    return request(port(), "POST", "/api/undo", headers, R"({"revision":1})");
  }
  const std::string json_type = "Content-Type: application/json\r\n";
};

TEST_F(Security, AnswersOnlyToItsOwnName) {
  const std::string number = std::to_string(port());
  EXPECT_EQ(status_for_host("Host: 127.0.0.1:" + number + "\r\n"), 200);
  EXPECT_EQ(status_for_host("Host: localhost:" + number + "\r\n"), 200);
  for (const std::string& host :
       {std::string(), std::string("Host: example.com\r\n"), "Host: example.com:" + number + "\r\n",
        std::string("Host: 127.0.0.1\r\n"), std::string("Host: 127.0.0.1:1\r\n"),
        "Host: 127.0.0.1:" + number + ".example.com\r\n", "Host: localhost.example.com:" + number + "\r\n",
        "Host: 127.0.0.1:" + number + "\r\nHost: example.com\r\n", "Host: [::1]:" + number + "\r\n",
        "Host: 0.0.0.0:" + number + "\r\n"}) {
    EXPECT_GE(status_for_host(host), 400) << host;
  }
}

TEST_F(Security, PagesOfAnotherOriginAreToldNothing) {
  const std::string number = std::to_string(port());
  EXPECT_EQ(get("/api/station", "Origin: http://127.0.0.1:" + number + "\r\n").status, 200);
  for (const std::string& origin :
       {std::string("http://example.com"), std::string("null"), "https://127.0.0.1:" + number,
        std::string("http://127.0.0.1:1"), "http://127.0.0.1:" + number + ".example.com", std::string("file://")}) {
    for (const char* path : {"/api/station", "/api/events", "/api/sites", "/"}) {
      const Response response = get(path, "Origin: " + origin + "\r\n");
      EXPECT_EQ(response.status, 403) << origin << path;
      EXPECT_EQ(response.body.find("Site S"), std::string::npos);
      EXPECT_FALSE(response.headers.contains("access-control-allow-origin"));
    }
  }
}

TEST_F(Security, WhatWritesNeedsTheKey) {
  std::string wrong = key();
  wrong.back() = wrong.back() == '0' ? '1' : '0';
  const std::string before = names_below(folder) + file_text(site);
  for (const char* path :
       {"/api/edit", "/api/text", "/api/undo", "/api/redo", "/api/open", "/api/save-as", "/api/new", "/api/runs"}) {
    const std::string body = R"({"revision":1,"label":"l","text":"x","name":"a.toml","template":"empty","edits":[]})";
    EXPECT_EQ(answer_to(port(), request(port(), "POST", path, json_type, body)).status, 401) << path;
    for (const std::string& each : {wrong, std::string(), key() + "0", key().substr(1), std::string("*")}) {
      EXPECT_EQ(answer_to(port(), post(port(), path, each, body)).status, 401) << path << each;
    }
  }
  EXPECT_EQ(answer_to(port(), request(port(), "DELETE", "/api/runs/1")).status, 401);
  EXPECT_EQ(names_below(folder) + file_text(site), before);
  EXPECT_EQ(revision(), 1);
}

TEST(Guards, KeysAreRandomAndLong) {
  EXPECT_EQ(new_key().size(), 32U);
  EXPECT_EQ(new_key().find_first_not_of("0123456789abcdef"), std::string::npos);
  EXPECT_NE(new_key(), new_key());
}

TEST_F(Security, ABodyIsJsonOfAKnownLength) {
  const std::string with_key = "X-Forecourse-Key: " + key() + "\r\n";
  EXPECT_EQ(answer_to(port(), undo_with(with_key)).status, 415);
  EXPECT_EQ(answer_to(port(), undo_with(with_key + "Content-Type: text/plain\r\n")).status, 415);
  EXPECT_EQ(answer_to(port(), undo_with(with_key + "Content-Type: multipart/form-data; boundary=x\r\n")).status, 415);
  EXPECT_EQ(answer_to(port(), undo_with(with_key + "Content-Type: application/jsonp\r\n")).status, 415);
  EXPECT_EQ(answer_to(port(), undo_with(with_key + "Content-Type: Application/JSON; charset=utf-8\r\n")).status, 409);
  const std::string head =
      "POST /api/undo HTTP/1.1\r\nHost: 127.0.0.1:" + std::to_string(port()) + "\r\n" + with_key + json_type;
  EXPECT_EQ(answer_to(port(), head + "\r\n").status, 411);
  EXPECT_EQ(answer_to(port(), head + "Transfer-Encoding: chunked\r\n\r\n5\r\nhello\r\n0\r\n\r\n").status, 411);
  EXPECT_EQ(answer_to(port(), head + "Content-Length: -1\r\n\r\n").status, 411);
  EXPECT_EQ(answer_to(port(), head + "Content-Length: 5\r\nContent-Length: 6\r\n\r\nhello").status, 411);
  EXPECT_EQ(answer_to(port(), head + "Content-Length: 99999999999999999999999\r\n\r\n").status, 413);
}

TEST_F(Security, WhatIsLeftOfARefusedBodyIsNoRequest) {
  const std::string inner = request(port(), "GET", "/api/sites");
  const Socket socket(port());
  socket.send(request(port(), "POST", "/api/none", json_type, inner));
  const std::string all = socket.read_until("templates", 3s);
  EXPECT_NE(all.find("404"), std::string::npos);
  EXPECT_EQ(all.find("templates"), std::string::npos);
}

TEST_F(Security, ALargeBodyIsNotTaken) {
  const std::string large(100U << 20U, 'x');
  std::thread sender([&] {
    for (int i = 0; i < 3; ++i) EXPECT_EQ(answer_to(port(), post(port(), "/api/text", key(), large)).status, 413);
  });
  for (int i = 0; i < 10; ++i) EXPECT_LT(patience(), 1s);
  sender.join();
  EXPECT_EQ(revision(), 1);
}

TEST_F(Security, ABodyThatDripsIsCut) {
  const Socket slow(port());
  slow.send("POST /api/ask HTTP/1.1\r\nHost: 127.0.0.1:" + std::to_string(port()) + "\r\n" + json_type +
            "Content-Length: 1000\r\n\r\n");
  const auto begin = std::chrono::steady_clock::now();
  bool open = true;
  while (open && std::chrono::steady_clock::now() - begin < 20s) {
    open = slow.send("x") && slow.read(500ms).empty();
    EXPECT_LT(patience(), 1s);
  }
  EXPECT_LT(std::chrono::steady_clock::now() - begin, 14s);
}

TEST_F(Security, IdleConnectionsKeepNobodyWaiting) {
  std::vector<Socket> idle;
  for (int i = 0; i < 400; ++i) {
    idle.emplace_back(port());
    if (i % 3 == 1) idle.back().send("GET /api/sta");
    if (i % 3 == 2) idle.back().send(request(port(), "GET", "/api/events"));
    if (i % 40 == 0) {
      EXPECT_LT(patience(), 1s) << i;
    }
  }
  for (int i = 0; i < 5; ++i) EXPECT_LT(patience(), 1s);
}

TEST_F(Security, NoMoreThanSixtyFourPagesListen) {
  std::vector<Socket> pages;
  for (int i = 0; i < 64; ++i) {
    pages.emplace_back(port());
    pages.back().send(request(port(), "GET", "/api/events"));
    ASSERT_NE(pages.back().read_until(": here", 5s).find("200 OK"), std::string::npos) << i;
  }
  EXPECT_EQ(get("/api/events").status, 503);
  EXPECT_LT(patience(), 1s);
  pages.clear();
  std::this_thread::sleep_for(1500ms);
  const Socket late(port());
  late.send(request(port(), "GET", "/api/events"));
  EXPECT_NE(late.read_until(": here", 5s).find("200 OK"), std::string::npos);
}

TEST_F(Security, WrongFieldsAreTold) {
  const std::vector<std::pair<const char*, const char*>> wrong{
      {"/api/edit", "[]"},
      {"/api/edit", "null"},
      {"/api/edit", "7"},
      {"/api/edit", "{}"},
      {"/api/edit", R"({"revision":"1","label":"l","edits":[]})"},
      {"/api/edit", R"({"revision":-1,"label":"l","edits":[]})"},
      {"/api/edit", R"({"revision":1e300,"label":"l","edits":[]})"},
      {"/api/edit", R"({"revision":18446744073709551615,"label":"l","edits":[]})"},
      {"/api/edit", R"({"revision":1,"label":7,"edits":[]})"},
      {"/api/edit", R"({"revision":1,"label":"l"})"},
      {"/api/edit", R"({"revision":1,"label":"l","edits":{}})"},
      {"/api/edit", R"({"revision":1,"label":"l","edits":[7]})"},
      {"/api/edit", R"({"revision":1,"label":"l","edits":[{}]})"},
      {"/api/edit", R"({"revision":1,"label":"l","edits":[{"path":"site.name"}]})"},
      {"/api/edit", R"({"revision":1,"label":"l","edits":[{"path":"site.name","value":7}]})"},
      {"/api/edit", R"({"revision":1,"label":"l","edits":[{"path":["site"],"value":"x"}]})"},
      {"/api/edit", R"({"revision":1,"label":"l","edits":[{"path":"site.name","remove":"yes"}]})"},
      {"/api/edit", R"({"revision":1,"label":"l","edits":[{"path":"site.name","value":"x","remove":true}]})"},
      {"/api/text", R"({"revision":1,"label":"l"})"},
      {"/api/undo", R"({"revision":null})"},
      {"/api/open", R"({"name":7})"},
      {"/api/new", R"({"name":"a.toml"})"},
      {"/api/ask", R"({"wants":{}})"},
      {"/api/ask", R"({})"},
      {"/api/runs", R"({"revision":1})"},
  };
  for (const auto& [path, body] : wrong) {
    const Response response = answer_to(port(), post(port(), path, key(), body));
    EXPECT_EQ(response.status, 400) << path << body << response.body;
    const json told = json::parse(response.body);
    EXPECT_FALSE(told["error"].get<std::string>().empty());
    EXPECT_TRUE(told["hint"].is_string());
  }
  EXPECT_EQ(revision(), 1);
}

TEST(Body, BracketsInBracketsHaveAnEnd) {
  EXPECT_TRUE(read_body(std::string(30, '[') + std::string(30, ']')));
  EXPECT_FALSE(read_body(std::string(2'000'000, '[')));
  EXPECT_FALSE(read_body(std::string(1'000'000, '[') + std::string(1'000'000, ']')));
  std::string objects;
  for (int i = 0; i < 1000; ++i) objects += "{\"a\":";
  EXPECT_FALSE(read_body(objects));
  EXPECT_TRUE(read_body("[\"" + std::string(1000, '[') + "\\\"[[\"]"));
}

/// Mutations of a request body that is right.
TEST_F(Security, MalformedBodiesNeverBreakIt) {
  const std::string right =
      R"({"revision":1,"label":"bore","edits":[{"path":"line.trunk.bore","value":"3 psi"},{"append":"[[tank"}],"wants":[{"study":"flow","open":["D1.a"],"units":"si"},{"drawing":"plan","width":640}],"name":"a/b.toml","template":"none","text":7,"want":[]})";
  std::mt19937 random(20261129);
  const std::vector<const char*> paths{"/api/edit", "/api/ask", "/api/text",   "/api/undo",
                                       "/api/open", "/api/new", "/api/save-as"};
  const std::string before = names_below(folder);
  const Socket* socket = nullptr;
  std::unique_ptr<Socket> kept;
  for (int round = 0; round < 3000; ++round) {
    std::string body = right;
    for (std::size_t changes = 1 + random() % 4; changes > 0; --changes) {
      const std::size_t at = random() % body.size();
      const std::size_t length = random() % 20;
      switch (random() % 4) {
        case 0:
          body[at] = static_cast<char>(random() % 256);
          break;
        case 1:
          body.erase(at, length);
          break;
        case 2:
          body.insert(at, body.substr(random() % body.size(), length));
          break;
        default:
          body.insert(at, 1, "{}[]\",:\\0"[random() % 9]);
          break;
      }
      if (body.empty()) body = "x";
    }
    if (socket == nullptr) {
      kept = std::make_unique<Socket>(port());
      socket = kept.get();
    }
    const char* path = paths[random() % paths.size()];
    socket->send(post(port(), path, key(), body));
    const Response response = read_answer(*socket);
    ASSERT_NE(response.status, 0) << body;
    ASSERT_NE(response.status, 500) << path << " " << body;
    EXPECT_FALSE(json::parse(response.body, nullptr, false).is_discarded());
    if (response.headers.contains("connection")) socket = nullptr;
  }
  EXPECT_LT(patience(), 1s);
  EXPECT_EQ(names_below(folder), before);
}

/// Bytes that are hardly a request.
TEST_F(Security, MalformedRequestsNeverBreakIt) {
  std::mt19937 random(7);
  const std::string right = post(port(), "/api/undo", key(), R"({"revision":0})");
  for (int round = 0; round < 300; ++round) {
    std::string bytes = right;
    for (std::size_t changes = 1 + random() % 6; changes > 0; --changes) {
      bytes[random() % bytes.size()] = static_cast<char>(random() % 256);
    }
    const Socket socket(port());
    socket.send(bytes);
    static_cast<void>(socket.read(20ms));
  }
  EXPECT_EQ(answer_to(port(), std::string(100'000, 'G') + " / HTTP/1.1\r\n\r\n").status / 100 == 2, false);
  static_cast<void>(answer_to(port(), "GET / HTTP/1.1\r\nX: " + std::string(100'000, 'x') + "\r\n\r\n"));
  static_cast<void>(get("/api/station", "Range: bytes=0-0,0-0,0-0,5-1,99999999999999999999-\r\n"));
  EXPECT_LT(patience(), 1s);
}

TEST_F(Security, NamesNeverLeadOutOfTheFolder) {
  const std::string above = std::filesystem::path(folder).parent_path().string();
  const std::string mark = "forecourse-escaped-" + std::to_string(port());
  const std::vector<std::string> names{"../" + mark + ".toml",
                                       "..\\" + mark + ".toml",
                                       above + "/" + mark + ".toml",
                                       "%2e%2e%2f" + mark + ".toml",
                                       "%252e%252e%252f" + mark + ".toml",
                                       "a/../../" + mark + ".toml",
                                       "./" + mark + ".toml",
                                       "." + mark + ".toml",
                                       mark + "\n.toml",
                                       mark + std::string("\0.toml", 6),
                                       "..%c0%af" + mark + ".toml",
                                       mark + ".toml/..",
                                       "~/" + mark + ".toml",
                                       "$(touch " + mark + ").toml",
                                       "C:\\" + mark + ".toml"};
  const std::string before = names_below(folder);
  for (const std::string& name : names) {
    EXPECT_GE(send("/api/save-as", {{"name", name}}).status, 400) << name;
    EXPECT_GE(send("/api/new", {{"name", name}, {"template", "empty"}}).status, 400) << name;
    EXPECT_GE(send("/api/open", {{"name", name}}).status, 400) << name;
  }
  EXPECT_EQ(names_below(folder), before);
  for (const auto& entry : std::filesystem::directory_iterator(above)) {
    EXPECT_EQ(entry.path().filename().string().find(mark), std::string::npos);
  }
}

TEST_F(Security, ANameOfAStationIsOnlyText) {
  for (const std::string& name : {std::string("</script><script>alert(1)</script>"), std::string("\" onload=\"x"),
                                  std::string("../../etc/passwd"), std::string("\xF0\x9F\x94\xA5 \xE2\x80\xAE"),
                                  std::string(5000, 'n'), std::string("a\\u0000b")}) {
    const Response edited =
        send("/api/edit",
             {{"revision", revision()}, {"label", name}, {"edits", {{{"path", "site.name"}, {"value", name}}}}});
    ASSERT_TRUE(edited.status == 200 || edited.status == 422) << edited.body;
    EXPECT_EQ(edited.headers.at("content-type"), "application/json");
    EXPECT_EQ(edited.headers.at("x-content-type-options"), "nosniff");
    EXPECT_EQ(get("/api/station").status, 200);
    const Response asked = send("/api/ask", {{"wants", {{{"drawing", "plan"}, {"width", 640}}}}});
    EXPECT_EQ(asked.status, 200);
    EXPECT_EQ(asked.body.find("<script"), std::string::npos);
  }
}

TEST_F(Security, ABrokenFileIsStillServed) {
  for (const char* text : {"", "[[[[", "\xFF\xFE", "format = 1\n[site]\nname = ", "\x01\x02"}) {
    write_outside(site, text);
    const Response edited = send(
        "/api/edit", {{"revision", revision()}, {"label", "l"}, {"edits", {{{"path", "site.name"}, {"value", "x"}}}}});
    EXPECT_TRUE(edited.status == 200 || edited.status == 409 || edited.status == 422) << edited.status << edited.body;
    EXPECT_EQ(get("/api/station").status, 200);
  }
}

}  // namespace
}  // namespace forecourse::server
