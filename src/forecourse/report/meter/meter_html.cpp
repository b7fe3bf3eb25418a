#include "forecourse/report/findings.h"
#include "forecourse/report/html/parts.h"
#include "forecourse/report/meter/meter_report.h"
#include "forecourse/report/meter/meter_view.h"
#include "forecourse/report/study_page.h"

namespace forecourse::report {
namespace {

constexpr Glyphs glyphs = Glyphs::unicode;

std::string of_meter(const studies::MeterTold& meter, const studies::MeterResult& result, site::Display display) {
  std::string out = html::heading(3, "Meter of " + meter.hose) + html::list(meter_answer(meter, display, glyphs)) +
                    html::list(left_out_of(meter));
  out += html::table(page_table(meter_limit_table(meter, result, display, glyphs), "Limits, " + meter.hose,
                                "Each in both forms: they need not agree."));
  out += html::table(page_table(proving_table(meter, display, glyphs), "Provings, " + meter.hose));
  return out + html::table(page_table(draw_table(meter, display, glyphs), "Draws, " + meter.hose));
}

}  // namespace

std::string meter_section(const studies::MeterResult& result, const site::Site& site) {
  if (result.meters.empty()) return {};
  std::string out = html::heading(2, "Meters");
  const svg::MeterDots chart = meter_dots(result, site.display);
  if (!chart.rows.empty()) {
    out += html::chart_figure(chart, "Dashed: limits that are a volume; dotted: limits that are a share.");
  }
  out += html::table(page_table(meters_table(result, site.display, glyphs), "Meters",
                                "A positive error: the meter tells more than it gives."));
  for (const studies::MeterTold& meter : result.meters) out += of_meter(meter, result, site.display);
  for (const studies::MetersOfBook& book : result.books) {
    out += html::heading(3, "Which meters explain " + book.book.book) +
           html::list(book_meters_answer(book, site.display, glyphs));
    out += html::table(page_table(share_table(book, site.display, glyphs), "Meters of " + book.book.book,
                                  "The last column: the error by which a meter that was not proved would alone "
                                  "explain what is left."));
  }
  return out;
}

std::string meter_report(const studies::MeterResult& result, const site::Site& site, const MeterFacts& facts) {
  return study_page("Meters", "meters", meter_cautions().front(),
                    meter_section(result, site) + findings_html(facts.findings, site.display),
                    {result.version, result.defaults, result.warnings, meter_cautions()}, site, facts);
}

}  // namespace forecourse::report
