#include "forecourse/cli/options/handover_options.h"

#include "forecourse/cli/options/site_options.h"

namespace forecourse::cli {

void add_kit_options(CLI::App& command, KitArguments& kit) {
  add_site_options(command, kit.site);
  command.add_option("--waste", kit.waste, "share of the pipe that is ordered on top (default: \"5 %\")");
  command.add_option("--stick", kit.stick, "length in which pipe comes, to count sticks: \"20 ft\"");
  add_pdf_options(command, kit, "kit");
}

void add_draw_options(CLI::App& command, DrawArguments& draw) {
  add_site_options(command, draw.site);
  handover::DrawingOptions& options = draw.options;
  command.add_option("WHICH", options.which, "plan, section (with its details), tank or dispenser (default: all)")
      ->check(CLI::IsMember({"plan", "section", "tank", "dispenser"}));
  command.add_option("--paper", options.paper, "a4, a3, letter or tabloid (default: tabloid with US units, else a3)")
      ->check(CLI::IsMember({"a4", "a3", "letter", "tabloid"}));
  command.add_option("--scale", options.scale, "\"1:100\" or \"1 in = 10 ft\" (default: the largest that fits)");
  command.add_option("--hose", options.hose, "whose course the sections follow (default: that of the longest lines)");
  command.add_option("--date", options.date, "for the title cells (default: today)");
  command.add_option("--drawn-by", options.drawn_by, "for the title cells");
  command.add_option("--checked-by", options.checked_by, "for the title cells (default: not checked)");
  command.add_flag("--pdf", draw.pdf, "also write drawing.pdf, true to scale (with weasyprint)");
}

void add_checks_options(CLI::App& command, ChecksArguments& checks) {
  add_site_options(command, checks.site);
  command.get_option("SITE")->required(false);
  command.add_option("--rules", checks.rules, "a rule set of a state or an owner (TOML)")->allow_extra_args(false);
  command.add_option("--records", checks.records, "folder with dips.csv, deliveries.csv, tests.csv, or a store");
  command.add_option("--on", checks.on, on_words);
  command.add_flag("--mend", checks.mend, "tell the smallest change that mends each finding that falls short");
  command.add_flag("--figures", checks.figures, "only list the figures that a requirement can be set on");
  add_pdf_options(command, checks, "checks");
}

void add_calendar_options(CLI::App& command, CalendarArguments& calendar) {
  add_site_options(command, calendar.site);
  command.add_option("--rules", calendar.rules, "a rule set of a state or an owner (TOML)")->allow_extra_args(false);
  command.add_option("--records", calendar.records, "folder with tests.csv, inspections.csv, dips.csv, or a store");
  command.add_option("--on", calendar.on, "day of the calendar: 2026-11-25 (default: today)");
  command.add_option("--within", calendar.within, "how far it looks ahead: \"90 days\"")->capture_default_str();
  command.add_option("--ics", calendar.ics, "write the due days into this file for a calendar (iCalendar)");
  command.add_option("--remind", calendar.remind, "remind so long before each due day: \"30 days\" (in the ics file)");
  add_pdf_options(command, calendar, "calendar");
}

void add_sheets_options(CLI::App& command, SheetsArguments& sheets) {
  add_site_options(command, sheets.site);
  command.add_option("SHEET", sheets.sheets, "which sheets (default: all)");
  command.add_option("--tolerance", sheets.tolerances, "agreed: flow=\"5 %\", pressure=\"2 psi\" or height=\"1/4 in\"")
      ->allow_extra_args(false);
  command.add_option("--records", sheets.records, "folder with tests.csv, inspections.csv, or a store");
  command.add_option("--readings", sheets.readings, "readings.csv of --out, filled in: held against what was computed");
  command.add_option("--store", sheets.store, "store into which the readings go, all or nothing");
  command.add_option("--on", sheets.on, "day for which the sheets are made: 2026-11-25 (default: today)");
  add_pdf_options(command, sheets, "sheets");
}

namespace {

CLI::Option* add_questions_options(CLI::App& command, QuestionsArguments& questions) {
  CLI::Option* count = command.add_option("--questions", questions.count,
                                          "ask so many questions of this station, instead of the lesson");
  command
      .add_option("--level", questions.level,
                  "of the questions: 1 who is new, 2 who installs, 3 who specifies (default: all)")
      ->needs(count);
  command.add_option("--seed", questions.seed, "which questions, about which parts (default: 1)")->needs(count);
  command.add_option("--page", questions.page, "questions of this page alone: nozzle")->needs(count);
  return count;
}

}  // namespace

void add_lesson_options(CLI::App& command, LessonArguments& lesson) {
  add_site_options(command, lesson.site);
  command.add_option("--lesson", lesson.lesson, "a lesson of your own (TOML; default: the built-in one)");
  CLI::Option* failure = command.add_option(
      "--failure", lesson.failure, "break a part, instead of the lesson: struck, vent-blocked, drive-off, ...");
  command.add_option("--at", lesson.at, "of the failure: the part (default: the first that it can happen to)")
      ->needs(failure);
  CLI::Option* questions = add_questions_options(command, lesson.questions)->excludes(failure);
  command.add_option("--take-away", lesson.take_away, "write the lesson as one file that runs in any browser, offline")
      ->excludes(failure, questions);
  command.add_option("--on", lesson.on, on_words);
  add_pdf_options(command, lesson, "lesson");
}

}  // namespace forecourse::cli
