// The report of all studies: what is in it, its title cells, and what is wrong with either.
#include <gtest/gtest.h>

#include "cli/program.h"

namespace forecourse::cli {
namespace {

Outcome study(const std::string& arguments, const std::string& environment = "") {
  return run_program(SITES_DIR, "study " + arguments, environment);
}

bool has(const std::string& text, const std::string& what) { return text.find(what) != std::string::npos; }

TEST(Report, HasTheSectionsThatWereChosen) {
  const std::string folder = scratch_folder("sections");
  const Outcome outcome = study("site-s.toml --sections findings,flow --sections rest --out " + quoted(folder));
  EXPECT_EQ(outcome.err, "");
  const std::string html = file_text(folder + "/report.html");
  for (const char* id : {"findings", "flow", "rest"})
    EXPECT_TRUE(has(html, std::string("<section id=\"") + id + "\"")) << id;
  for (const char* id : {"asked", "course", "spans"})
    EXPECT_FALSE(has(html, std::string("<section id=\"") + id + "\"")) << id;
  EXPECT_TRUE(has(html, "<h2>Cautions</h2>"));
}

TEST(Report, FillsItsTitleCells) {
  const std::string folder = scratch_folder("cells");
  const Outcome outcome =
      study("site-s.toml --sections flow --cell 'prepared by=R. Tay' --cell revision=B --out " + quoted(folder));
  EXPECT_EQ(outcome.err, "");
  const std::string html = file_text(folder + "/report.html");
  EXPECT_TRUE(has(html, "<dt>Prepared by</dt><dd>R. Tay</dd>"));
  EXPECT_TRUE(has(html, "<dt>Revision</dt><dd>B</dd>"));
  EXPECT_TRUE(has(html, "<dt>Checked by</dt><dd>not checked</dd>"));
}

TEST(Report, TellsAllThatIsWrongWithNames) {
  const std::string folder = scratch_folder("wrong");
  const Outcome outcome =
      study("site-s.toml --sections flwo --cell drawn=x --cell 'revison=B' --out " + quoted(folder));
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_EQ(outcome.out, "");
  EXPECT_TRUE(has(outcome.err, "error: the report has no section 'flwo'\n  hint: did you mean 'flow'?"));
  EXPECT_TRUE(has(outcome.err, "error: there is no title cell 'drawn'\n"));
  EXPECT_TRUE(has(outcome.err, "error: there is no title cell 'revison'\n  hint: did you mean 'revision'?"));
  EXPECT_EQ(file_text(folder + "/report.html"), "");
}

TEST(Report, SaysWhatToInstallForAPdf) {
  const std::string folder = scratch_folder("no-pdf");
  const Outcome outcome = study("site-s.toml --sections flow --pdf --out " + quoted(folder), "PATH=/nowhere");
  EXPECT_EQ(outcome.exit, 2);
  EXPECT_EQ(outcome.err, folder + "/report.pdf: error: not written: the program 'weasyprint' is not installed\n" +
                             "  hint: apt-get install weasyprint, or print report.html from a browser\n");
  EXPECT_TRUE(has(file_text(folder + "/report.html"), "</html>"));
}

TEST(Report, SaysFirstWhatToDoWhereItTellsOfAnIncident) {
  const std::string folder = scratch_folder("incident");
  const Outcome outcome = study("hollin-gap.toml --sections incident-1 --out " + quoted(folder));
  EXPECT_EQ(outcome.err, "");
  const std::string html = file_text(folder + "/report.html");
  const std::size_t caution = html.find("<p class=\"caution\"");
  ASSERT_NE(caution, std::string::npos);
  EXPECT_LT(html.find("Stop the pump. Clear people away. Call the fire service."), html.find("<section"));
}

}  // namespace
}  // namespace forecourse::cli
