#pragma once

#include <gtest/gtest.h>

#include <chrono>
#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>
#include <string>

#include "forecourse/server/http/workbench.h"
#include "server/http/client.h"
#include "server/scratch.h"

namespace forecourse::server {

/// A workbench that serves a copy of Site S while the test lasts.
class Running : public testing::Test {
 protected:
  void SetUp() override {
    site = copy_of_site_s(std::string("http-") + testing::UnitTest::GetInstance()->current_test_info()->name());
    folder = std::filesystem::path(site).parent_path().string();
    start();
  }
  void TearDown() override {
    workbench.reset();
    std::filesystem::remove_all(folder);
  }

  void start() {
    workbench = std::make_unique<Workbench>(WorkbenchOptions{site, 0, web});
    ASSERT_EQ(workbench->start(), "");
  }

  [[nodiscard]] int port() const { return workbench->doorway().port; }
  [[nodiscard]] std::string key() const { return workbench->doorway().key; }

  [[nodiscard]] Response get(const std::string& path, const std::string& headers = {}) const {
    return answer_to(port(), request(port(), "GET", path, headers));
  }
  [[nodiscard]] Response send(const std::string& path, const nlohmann::json& body) const {
    return answer_to(port(), post(port(), path, key(), body.dump()));
  }
  [[nodiscard]] nlohmann::json station() const { return nlohmann::json::parse(get("/api/station").body); }
  [[nodiscard]] int revision() const { return station()["revision"].get<int>(); }

  [[nodiscard]] Response set_bore(int at, const std::string& to) const {
    return send("/api/edit",
                {{"revision", at}, {"label", "bore"}, {"edits", {{{"path", "line.trunk.bore"}, {"value", to}}}}});
  }

  /// How long a page waits for the station.
  [[nodiscard]] std::chrono::milliseconds patience() const {
    const auto begin = std::chrono::steady_clock::now();
    EXPECT_EQ(get("/api/station").status, 200);
    return std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now() - begin);
  }

  std::string site;
  std::string folder;
  std::string web = "/nonexistent";
  std::unique_ptr<Workbench> workbench;
};

}  // namespace forecourse::server
