// What a lesson that needs no program carries: it stays data, whatever the site file says.
#include "forecourse/report/lesson/take_away.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

namespace forecourse::report {
namespace {

const std::string page = "<html><head></head><body></body></html>";

TEST(TakeAway, StandsBeforeTheEndOfThePage) {
  const std::string whole = take_away_page(page, {"Mere", "format = 1\n", "", site::Display::si, "QUJD"});
  const std::size_t begin = whole.find(R"(<script type="application/json" id="station">)") + 45;
  const nlohmann::json station = nlohmann::json::parse(whole.substr(begin, whole.find("</script>", begin) - begin));
  EXPECT_EQ(station,
            nlohmann::json({{"name", "Mere"}, {"site", "format = 1\n"}, {"lesson", nullptr}, {"units", "si"}}));
  EXPECT_NE(whole.find(R"(<script type="text/plain" id="engine">QUJD</script>)"), std::string::npos);
  EXPECT_EQ(whole.substr(whole.size() - 14), "</body></html>");
}

TEST(TakeAway, TextOfAStationEndsNoScript) {
  const std::string text = "# </script><script>alert(1)</script> <!-- \n";
  const std::string whole = take_away_page(page, {text, text, text, site::Display::us, ""});
  EXPECT_EQ(whole.find("alert(1)</script> <!--"), std::string::npos);
  const std::size_t begin = whole.find("id=\"station\">") + 13;
  const nlohmann::json station = nlohmann::json::parse(whole.substr(begin, whole.find("</script>", begin) - begin));
  EXPECT_EQ(station["site"], text);
  EXPECT_EQ(station["lesson"], text);
}

TEST(TakeAway, NeedsAPageWithABody) { EXPECT_EQ(take_away_page("<p>", {}), ""); }

}  // namespace
}  // namespace forecourse::report
