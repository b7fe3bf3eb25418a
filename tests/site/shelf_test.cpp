// SOURCE: [asme_b36_10m, table 1, Schedule 40] inside diameters and walls
// SOURCE: [lmno_k, table of surface roughness and table of K] roughness of commercial steel; threaded tees
#include "forecourse/site/shelf.h"

#include <gtest/gtest.h>

#include <set>
#include <stdexcept>

#include "forecourse/base/unit_text.h"

namespace forecourse::site {
namespace {

TEST(Shelf, EveryEntryHasIdStatusAndSource) {
  std::set<std::string> ids;
  const auto check = [&](const auto& entry) {
    EXPECT_FALSE(entry.id.empty());
    EXPECT_TRUE(ids.insert(entry.id).second) << entry.id << " stands there twice";
    EXPECT_GT(entry.source.size(), 8U) << entry.id;
    const bool says_illustrative = entry.id.starts_with("illustrative-");
    EXPECT_EQ(entry.status == ShelfStatus::illustrative, says_illustrative) << entry.id;
  };
  for (const ShelfPipe& pipe : shelf().pipes) check(pipe);
  for (const ShelfPart& part : shelf().parts) check(part);
  EXPECT_EQ(shelf().pipes.size(), pipe_ids().size());
  EXPECT_EQ(shelf().parts.size(), part_ids().size());
}

struct SteelPipe {
  const char* id;
  double outside_diameter_in;
  double wall_in;
  double inside_diameter_in;
};

// As printed in inches.
const SteelPipe schedule_40[] = {
    {"schedule-40-three-quarter-inch", 1.050, 0.113, 0.824},
    {"schedule-40-one-inch", 1.315, 0.133, 1.049},
    {"schedule-40-one-and-a-quarter-inch", 1.660, 0.140, 1.380},
    {"schedule-40-one-and-a-half-inch", 1.900, 0.145, 1.610},
    {"schedule-40-two-inch", 2.375, 0.154, 2.067},
    {"schedule-40-two-and-a-half-inch", 2.875, 0.203, 2.469},
    {"schedule-40-three-inch", 3.500, 0.216, 3.068},
    {"schedule-40-four-inch", 4.500, 0.237, 4.026},
};

TEST(Shelf, Schedule40AgreesWithPublishedTable) {
  constexpr double rounding = 1e-12;
  for (const SteelPipe& printed : schedule_40) {
    const ShelfPipe* pipe = find_pipe(printed.id);
    ASSERT_NE(pipe, nullptr) << printed.id;
    EXPECT_NEAR(from_si(pipe->bore, "in"), printed.inside_diameter_in, rounding) << printed.id;
    EXPECT_NEAR(from_si(pipe->wall.value(), "in"), printed.wall_in, rounding) << printed.id;
    EXPECT_NEAR(from_si(pipe->outside_diameter.value(), "in"), printed.outside_diameter_in, rounding) << printed.id;
    EXPECT_DOUBLE_EQ(pipe->roughness, 4.5e-5) << printed.id;
    EXPECT_EQ(pipe->status, ShelfStatus::published);
  }
}

TEST(Shelf, BoreIsOutsideLessTwoWalls) {
  for (const ShelfPipe& pipe : shelf().pipes) {
    EXPECT_GT(pipe.bore, 0.0) << pipe.id;
    EXPECT_GE(pipe.roughness, 0.0) << pipe.id;
    if (pipe.outside_diameter && pipe.wall) {
      EXPECT_NEAR(pipe.bore, *pipe.outside_diameter - 2.0 * *pipe.wall, 1e-9) << pipe.id;
    }
  }
}

TEST(Shelf, ThreadedTeesAgreeWithPublishedTable) {
  EXPECT_EQ(find_part("tee-run")->loss.k->likely, 0.9);
  EXPECT_EQ(find_part("tee-branch")->loss.k->likely, 2.0);
  EXPECT_FALSE(find_part("tee-run")->loss.bore.has_value());
}

TEST(Shelf, EveryPartIsOneFigureOfAKnownKind) {
  const std::set<std::string> kinds = {"connection", "filter", "meter",       "control_valve", "breakaway",
                                       "swivel",     "nozzle", "shear_valve", "leak_detector"};
  for (const ShelfPart& part : shelf().parts) {
    EXPECT_TRUE(kinds.contains(part.kind)) << part.id;
    EXPECT_GT(part.figure, 0.0) << part.id;
    EXPECT_NE(part.loss.k.has_value(), part.loss.per_flow_squared.has_value()) << part.id;
    EXPECT_EQ(part.unit.empty(), part.loss.k.has_value()) << part.id;
    EXPECT_EQ(part.kind != "connection" && part.loss.k, part.loss.bore.has_value()) << part.id;
  }
  for (const std::string& kind : kinds) EXPECT_FALSE(part_ids(kind).empty()) << kind;
}

// Invented figures that belong together, so that examples made of parts and lumped ones resemble each other.
TEST(Shelf, HangingHardwareAddsUpAsItsCommentSays) {
  const auto sum = [](std::initializer_list<const char*> ids) {
    double total = 0.0;
    for (const char* id : ids) total += from_si(find_part(id)->figure, "psi/gpm^2");
    return total;
  };
  EXPECT_NEAR(
      sum({"illustrative-filter", "illustrative-meter", "illustrative-control-valve", "illustrative-three-quarter",
           "illustrative-three-quarter-swivel", "illustrative-three-quarter-nozzle"}),
      0.160, 1e-12);
  EXPECT_NEAR(
      sum({"illustrative-high-flow-filter", "illustrative-high-flow-meter", "illustrative-high-flow-control-valve",
           "illustrative-one-inch-breakaway", "illustrative-one-inch-swivel", "illustrative-one-inch-nozzle"}),
      0.0083, 1e-12);
}

TEST(Shelf, FindsByIdAndKind) {
  EXPECT_EQ(find_part("illustrative-three-quarter", "breakaway")->id, "illustrative-three-quarter");
  EXPECT_EQ(find_part("illustrative-three-quarter", "nozzle"), nullptr);
  EXPECT_EQ(find_part("no-such-part"), nullptr);
  EXPECT_EQ(find_pipe(""), nullptr);
  EXPECT_NE(find_pipe("illustrative-line"), nullptr);
  EXPECT_NE(find_pipe("illustrative-hose"), nullptr);
}

TEST(Shelf, AFaultOfOurOwnStops) {
  const char* faults[] = {"[[pipe]", "[[pipe]]\nbore = \"2 in\"",
                          "[[part]]\nid = \"a\"\nkind = \"filter\"\nstatus = \"certain\"\nsource = \"x\"",
                          "[[part]]\nid = \"a\"\nkind = \"filter\"\nstatus = \"published\"\nsource = \"x\"\nloss = {}",
                          "[[part]]\nid = \"a\"\nkind = \"filter\"\nstatus = \"published\"\nsource = \"x\"\nloss = { "
                          "per_flow_squared = \"1 psi\" }"};
  for (const char* fault : faults) EXPECT_THROW((void)read_shelf({fault}), std::logic_error) << fault;
}

}  // namespace
}  // namespace forecourse::site
