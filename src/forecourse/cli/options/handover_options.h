#pragma once

#include <CLI/CLI.hpp>

#include "forecourse/cli/commands.h"

namespace forecourse::cli {

// Options of what is handed over: checks, equipment schedule, drawings, calendar, sheets, lesson.

void add_kit_options(CLI::App& command, KitArguments& kit);
void add_draw_options(CLI::App& command, DrawArguments& draw);
void add_checks_options(CLI::App& command, ChecksArguments& checks);
void add_calendar_options(CLI::App& command, CalendarArguments& calendar);
void add_sheets_options(CLI::App& command, SheetsArguments& sheets);
void add_lesson_options(CLI::App& command, LessonArguments& lesson);

}  // namespace forecourse::cli
