// The workbench as it is run: what it prints, how it ends, and that what it said is saved outlives being killed.
#include <arpa/inet.h>
#include <fcntl.h>
#include <gtest/gtest.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <thread>
#include <vector>

#include "cli/program.h"
#include "forecourse/site/edit.h"

namespace forecourse::cli {
namespace {

using namespace std::chrono_literals;
using nlohmann::json;

/// The program while it serves a site file; killed with its owner.
class Served {
 public:
  explicit Served(const std::string& site) {
    std::array<int, 2> ends{};
    if (pipe2(ends.data(), O_CLOEXEC) != 0) return;
    process_ = fork();
    if (process_ == 0) {
      dup2(ends[1], STDOUT_FILENO);
      execl(FORECOURSE_PROGRAM, FORECOURSE_PROGRAM, "serve", site.c_str(), "--port", "0", nullptr);
      _exit(127);
    }
    close(ends[1]);
    read_lines(ends[0]);
    close(ends[0]);
    const std::size_t colon = printed.rfind(':', printed.find("/#key="));
    if (colon == std::string::npos) return;
    port_ = std::atoi(printed.c_str() + colon + 1);
    key_ = printed.substr(printed.find("#key=") + 5, 32);
  }
  Served(const Served&) = delete;
  Served& operator=(const Served&) = delete;
  ~Served() { end(SIGKILL); }

  /// \return its exit code; -1: it did not end by itself
  int end(int signal) {
    if (process_ <= 0) return -1;
    int status = 0;
    kill(process_, signal);
    waitpid(process_, &status, 0);
    process_ = 0;
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  }
  void shoot() const { kill(process_, SIGKILL); }

  /// The body of the answer; empty: none came.
  [[nodiscard]] std::string ask(const std::string& method, const std::string& path, const std::string& body) const {
    const int number = connected();
    if (number < 0) return {};
    const std::string text = method + " " + path + " HTTP/1.1\r\nHost: localhost:" + std::to_string(port_) +
                             "\r\nConnection: close\r\nX-Forecourse-Key: " + key_ +
                             "\r\nContent-Type: application/json\r\nContent-Length: " + std::to_string(body.size()) +
                             "\r\n\r\n" + body;
    std::string all;
    std::array<char, 65536> buffer{};
    ssize_t count = ::send(number, text.data(), text.size(), MSG_NOSIGNAL);
    while (count > 0) {
      count = recv(number, buffer.data(), buffer.size(), 0);
      if (count > 0) all.append(buffer.data(), static_cast<std::size_t>(count));
    }
    close(number);
    const std::size_t head = all.find("\r\n\r\n");
    return head == std::string::npos ? std::string() : all.substr(head + 4);
  }

  [[nodiscard]] json get(const std::string& path) const { return json::parse(ask("GET", path, ""), nullptr, false); }
  [[nodiscard]] json post(const std::string& path, const json& body) const {
    return json::parse(ask("POST", path, body.dump()), nullptr, false);
  }

  /// A connection; -1: it is not there.
  [[nodiscard]] int connected() const {
    const int number = socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_port = htons(static_cast<std::uint16_t>(port_));
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    if (connect(number, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0) return number;
    close(number);
    return -1;
  }

  std::string printed;

 private:
  void read_lines(int end) {
    char c = 0;
    for (int lines = 0; lines < 2 && read(end, &c, 1) == 1; lines += c == '\n' ? 1 : 0) printed += c;
  }

  pid_t process_ = 0;
  int port_ = 0;
  std::string key_;
};

std::string copy_of_site(const std::string& name) {
  const std::string path = scratch_folder(name) + "/site-s.toml";
  std::filesystem::copy_file(std::string(SITES_DIR) + "/site-s.toml", path);
  return path;
}

std::string bore_of(const std::string& text) { return site::value_at(text, "line.trunk.bore").value; }

json bore_edit(const json& station, const std::string& bore) {
  return {{"revision", station["revision"]},
          {"label", "bore " + bore},
          {"edits", {{{"path", "line.trunk.bore"}, {"value", bore}}}}};
}

TEST(Serve, PrintsOneAddressAndHowToEndIt) {
  const std::string path = copy_of_site("serve-print");
  Served served(path);
  EXPECT_TRUE(served.printed.starts_with("workbench: http://127.0.0.1:")) << served.printed;
  EXPECT_TRUE(served.printed.ends_with("\nCtrl+C ends it\n")) << served.printed;
  EXPECT_EQ(served.get("/api/station")["file"], "site-s.toml");
  EXPECT_EQ(served.end(SIGTERM), 0);
}

TEST(Serve, EndsSoonWithOpenStreams) {
  for (const int signal : {SIGINT, SIGTERM}) {
    Served served(copy_of_site("serve-end"));
    std::vector<int> streams;
    for (int i = 0; i < 10; ++i) {
      streams.push_back(served.connected());
      const std::string text = "GET /api/events HTTP/1.1\r\nHost: localhost\r\n\r\n";
      ASSERT_GT(send(streams.back(), text.data(), i % 2 == 0 ? text.size() : 20, MSG_NOSIGNAL), 0);
    }
    const auto begin = std::chrono::steady_clock::now();
    EXPECT_EQ(served.end(signal), 0);
    EXPECT_LT(std::chrono::steady_clock::now() - begin, 2s);
    for (const int stream : streams) close(stream);
  }
}

TEST(Serve, TellsWhatItCannotOpen) {
  const Outcome outcome = run_program(scratch_folder("serve-none"), "serve none.toml");
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_EQ(outcome.out, "");
  EXPECT_NE(outcome.err.find("none.toml"), std::string::npos);
  EXPECT_EQ(run_program(SITES_DIR, "serve site-s.toml --web /nonexistent").exit, 2);
  EXPECT_EQ(run_program(SITES_DIR, "serve site-s.toml --port 70000").exit, 2);
}

/// Edits one after the other until it is killed at some moment; then the file holds the last that was answered, or the
/// one that was being saved, and each that was answered can be undone.
TEST(FullServe, LosesNothingItAnsweredWhenItIsKilled) {
  const std::string path = copy_of_site("serve-kill");
  std::mt19937 random(20261129);
  int written = 0;
  std::vector<std::string> answered{bore_of(file_text(path))};
  for (int round = 0; round < 50; ++round) {
    Served served(path);
    json station = served.get("/api/station");
    ASSERT_TRUE(station.is_object()) << round;
    const auto delay = std::chrono::microseconds(random() % 150'000);
    std::thread killer([&] {
      std::this_thread::sleep_for(delay);
      served.shoot();
    });
    std::string tried;
    while (true) {
      tried = "\"" + std::to_string(2 + ++written) + " mm\"";
      const json next = served.post("/api/edit", bore_edit(station, tried));
      if (!next.is_object() || !next.contains("text")) break;
      station = next;
      answered.push_back(tried);
      ASSERT_EQ(bore_of(next["text"].get<std::string>()), tried);
    }
    killer.join();
    served.end(SIGKILL);
    const std::string text = file_text(path);
    const std::string held = bore_of(text);
    ASSERT_TRUE(held == answered.back() || held == tried) << round << ": " << held;
    ASSERT_TRUE(text.starts_with("# Site S"));
    ASSERT_TRUE(text.ends_with("counts_until = \"600 s\"\n")) << round;
    if (held == tried) answered.push_back(tried);
  }
  ASSERT_GT(answered.size(), 60U) << "too few edits to mean anything";
  Served served(path);
  json station = served.get("/api/station");
  ASSERT_TRUE(station.is_object());
  std::size_t at = answered.size() - 1;
  EXPECT_EQ(bore_of(station["text"].get<std::string>()), answered[at]);
  for (int undone = 0; undone < 199 && at > 0; ++undone) {
    station = served.post("/api/undo", {{"revision", station["revision"]}});
    ASSERT_TRUE(station.contains("text")) << undone << station;
    EXPECT_EQ(bore_of(station["text"].get<std::string>()), answered[--at]);
  }
}

TEST(Serve, TwoPagesAreToldOfEachOther) {
  Served served(copy_of_site("serve-two"));
  const json both = served.get("/api/station");
  EXPECT_TRUE(served.post("/api/edit", bore_edit(both, "3 in")).contains("text"));
  const json refused = served.post("/api/edit", bore_edit(both, "4 in"));
  EXPECT_EQ(refused["changed"], json::array({"line.trunk.bore"}));
  EXPECT_EQ(bore_of(refused["station"]["text"].get<std::string>()), "\"3 in\"");
  EXPECT_TRUE(served.post("/api/edit", bore_edit(refused["station"], "4 in")).contains("text"));
}

}  // namespace
}  // namespace forecourse::cli
