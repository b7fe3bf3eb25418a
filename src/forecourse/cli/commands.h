#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "forecourse/cli/run.h"
#include "forecourse/cli/site_source.h"
#include "forecourse/handover/drawings/drawings.h"
#include "forecourse/studies/delivery/read_delivery_options.h"
#include "forecourse/studies/flow/flow.h"
#include "forecourse/studies/ledger/read_ledger_options.h"
#include "forecourse/studies/line_test/read_line_test_options.h"
#include "forecourse/studies/meter/read_meter_options.h"
#include "forecourse/studies/tank/read_tank_options.h"

namespace forecourse::cli {

/// What the flow study is told on the command line.
struct FlowArguments {
  SiteArguments site;
  std::vector<std::string> open;      ///< each a set of hose ids parted by commas, "all" or "each"
  std::string keep;                   ///< a flow with its unit
  std::optional<std::string> order;   ///< hose ids parted by commas, in the order in which they open; empty: not asked
  std::string command;                ///< as typed, for the report
  bool pdf = false;                   ///< report.pdf beside report.html
  std::string paper;                  ///< "a4" or "letter"; empty: letter with US units, A4 with SI
  std::string on;                     ///< the day by which tests are judged overdue; empty: today
  std::vector<std::string> sections;  ///< of the report, ids parted by commas; empty: all that have something to tell
  std::string records;                ///< folder or file of records, for the ledger; empty: none
  std::vector<std::string> cells;     ///< of the report's title block: "prepared by=R. Tay"
};

/// What an incident is told on the command line.
struct IncidentArguments {
  SiteArguments site;
  std::string kind;
  std::string id;  ///< of the file's [[incident]], where one kind is asked more than once
  std::string at;
  std::string open;                  ///< hose ids parted by commas
  std::string stop_at;               ///< a time
  std::string count_for;             ///< a time
  std::string open_area;             ///< an area
  std::vector<std::string> without;  ///< barriers
  std::vector<std::string> dead;     ///< barriers, each with "=" and a time or without
  std::size_t runs = 0;
  std::uint64_t seed = 1;
  std::string replay;   ///< a document written before
  std::string on;       ///< the day by which tests are judged overdue; empty: today
  bool pdf = false;     ///< a PDF beside the page
  std::string paper;    ///< of the PDF, as of the flow study
  std::string command;  ///< as typed, for the report
};

/// What a comparison is told on the command line.
struct CompareArguments {
  SiteArguments site;             ///< A; the sets apply to B
  std::string other;              ///< the file of B; empty: A's
  std::vector<std::string> both;  ///< values changed in A and in B
  std::vector<std::string> open;  ///< as of the flow study
  std::string keep;               ///< a flow with its unit
  std::string gain;               ///< a share: "1 %"; empty: the default
  IncidentArguments incident;     ///< what happens at both; without a kind flows are compared; its site is not used
  std::string command;            ///< as typed, for the report
};

/// What the containment study is told on the command line.
struct ContainmentArguments {
  SiteArguments site;
  std::vector<std::string> inflows;  ///< flows with their units
  std::string dead_for;              ///< a time: the sensors see nothing before
  std::string command;               ///< as typed, for the report
};

/// What the tank study is told on the command line.
struct TankArguments {
  SiteArguments site;
  studies::TankAsked asked;
  bool pdf = false;     ///< tank.pdf beside tank.html
  std::string paper;    ///< of the PDF, as of the flow study
  std::string command;  ///< as typed, for the report
};

/// What the flotation study is told on the command line.
struct FlotationArguments {
  SiteArguments site;
  std::string tank;         ///< id; empty: every tank with a flotation table
  std::string water_level;  ///< a length below grade
  std::string filled;       ///< a volume
  std::string factor;       ///< a number
  bool pdf = false;         ///< flotation.pdf beside flotation.html
  std::string paper;        ///< of the PDF, as of the flow study
  std::string command;      ///< as typed, for the report
};

/// What the vapor study is told on the command line.
struct VaporArguments {
  SiteArguments site;
  std::string temperature;  ///< of the fuels
  std::string on;           ///< the day by which tests are judged overdue; empty: today
  bool pdf = false;         ///< vapor.pdf beside vapor.html
  std::string paper;        ///< of the PDF, as of the flow study
  std::string command;      ///< as typed, for the report
};

/// What the ledger is told on the command line.
struct LedgerArguments {
  SiteArguments site;
  std::string records;  ///< folder or file of records
  studies::LedgerAsked asked;
  bool pdf = false;     ///< ledger.pdf beside ledger.html
  std::string paper;    ///< of the PDF, as of the flow study
  std::string command;  ///< as typed, for the report
};

/// What meters are told on the command line.
struct MeterArguments {
  SiteArguments site;
  std::string records;             ///< folder or file of records; may be empty
  std::vector<std::string> draws;  ///< "indicated=5 gal, measure=5 gal, scale=-7 in3"
  studies::MeterTexts texts;
  bool pdf = false;     ///< meter.pdf beside meter.html
  std::string paper;    ///< of the PDF, as of the flow study
  std::string command;  ///< as typed, for the report
};

/// What a test of the lines is told on the command line.
struct LineTestArguments {
  SiteArguments site;
  studies::LineTestTexts texts;
  std::string on;       ///< the day by which tests are judged overdue; empty: today
  std::string command;  ///< as typed, for the report
};

/// What checks are told on the command line.
struct ChecksArguments {
  SiteArguments site;
  std::vector<std::string> rules;  ///< files of rule sets
  std::string records;             ///< folder of CSV files or a store
  std::string on;                  ///< the day by which tests are judged overdue; empty: today
  bool mend = false;               ///< tell what would mend each finding that falls short
  bool figures = false;            ///< only list what a requirement can be set on
  bool pdf = false;                ///< checks.pdf beside checks.html
  std::string paper;               ///< of the PDF, as of the flow study
  std::string command;             ///< as typed, for the report
};

/// What the calendar is told on the command line.
struct CalendarArguments {
  SiteArguments site;
  std::vector<std::string> rules;  ///< files of rule sets
  std::string records;             ///< folder of CSV files or a store
  std::string on;                  ///< the day of the calendar; empty: today
  std::string within = "90 days";  ///< that are looked ahead
  std::string remind;              ///< "30 days" before a due day; empty: no reminders
  std::string ics;                 ///< file for the calendar file; empty: none
  bool pdf = false;                ///< calendar.pdf beside calendar.html
  std::string paper;               ///< of the PDF, as of the flow study
  std::string command;             ///< as typed, for the report
};

/// What an equipment schedule is told on the command line.
struct KitArguments {
  SiteArguments site;
  std::string waste;    ///< a share
  std::string stick;    ///< a length
  bool pdf = false;     ///< kit.pdf beside kit.html
  std::string paper;    ///< of the PDF, as of the flow study
  std::string command;  ///< as typed, for the report
};

/// What drawings are told on the command line.
struct DrawArguments {
  SiteArguments site;
  handover::DrawingOptions options;
  bool pdf = false;     ///< drawing.pdf, a sheet for each drawing
  std::string command;  ///< as typed
};

/// What sheets are told on the command line.
struct SheetsArguments {
  SiteArguments site;
  std::vector<std::string> sheets;      ///< ids; none: all
  std::vector<std::string> tolerances;  ///< "flow=5 %"
  std::string records;                  ///< folder of CSV files or a store
  std::string readings;                 ///< a file that was filled in
  std::string store;                    ///< into which its readings go
  std::string on;                       ///< the day for which the sheets are made; empty: today
  bool pdf = false;                     ///< sheets.pdf beside sheets.html
  std::string paper;                    ///< of the PDF, as of the flow study
  std::string command;                  ///< as typed, for the report
};

/// What the command lesson is told of questions.
struct QuestionsArguments {
  std::optional<std::size_t> count;  ///< empty: no questions are asked for
  int level = 0;                     ///< 0: every level
  std::uint64_t seed = 1;
  std::string page;  ///< empty: every page
};

/// What a lesson is told on the command line.
struct LessonArguments {
  SiteArguments site;
  std::string lesson;            ///< a lesson file; empty: the built-in lesson
  std::string failure;           ///< id of what is broken instead; empty: nothing
  std::string at;                ///< of the failure: id of the part
  QuestionsArguments questions;  ///< asked instead, where there is a count
  std::string take_away;         ///< file of the lesson that needs no program; empty: none is written
  std::string on;                ///< the day of its findings; empty: today
  bool pdf = false;              ///< lesson.pdf beside lesson.html
  std::string paper;             ///< of the PDF, as of the flow study
  std::string command;           ///< as typed, for the report
};

/// What a delivery is told on the command line.
struct DeliveryArguments {
  SiteArguments site;
  studies::DeliveryTexts texts;
  bool pdf = false;     ///< delivery.pdf beside delivery.html
  std::string paper;    ///< of the PDF, as of the flow study
  std::string command;  ///< as typed, for the report
};

/// What the commands of the records are told on the command line.
struct RecordsArguments {
  std::string store;               ///< path of the store
  std::vector<std::string> files;  ///< CSV files, or folders of them
  std::string mapping;             ///< path; empty: files are in our own form
  std::string site;                ///< path of a site file whose names the records must use; empty: any names
  bool dry_run = false;
  bool without_rejects = false;
  std::string kind;                 ///< of a row that is entered
  std::vector<std::string> values;  ///< of it: "depth=71 1/4 in"
  std::string out;                  ///< folder of an export, file of a backup
  bool json = false;
};

/// What the workbench is told on the command line.
struct ServeArguments {
  std::string site;         ///< path of the site file
  std::optional<int> port;  ///< 0: any that is free; empty: the first that is free from 8377
  std::string web;          ///< folder of the built page; empty: `web` beside the program
  std::string records;      ///< folder or store of records; empty: those beside the site file, if any
};

/// All studies of a station: summary on the screen, report into `--out`.
[[nodiscard]] Exit study_command(const FlowArguments& arguments);

/// The flow study alone.
[[nodiscard]] Exit flow_command(const FlowArguments& arguments);

/// Two stations, or one and itself with changed values, held against each other: their flows, or one incident at both.
[[nodiscard]] Exit compare_command(const CompareArguments& arguments);

/// What escapes when something goes wrong, event by event, with and without each barrier.
[[nodiscard]] Exit incident_command(const IncidentArguments& arguments);

/// Sumps, joints and double-walled lines: what they hold, how soon they fill, where fuel goes.
[[nodiscard]] Exit containment_command(const ContainmentArguments& arguments);

/// What each tank holds at any depth, the room in it, where overfill devices belong, what siphons do.
[[nodiscard]] Exit tank_command(const TankArguments& arguments);

/// What holds buried tanks down against the ground water.
[[nodiscard]] Exit flotation_command(const FlotationArguments& arguments);

/// Vapor: its pressure, what is lost of it, what rules and tests ask; and product care.
[[nodiscard]] Exit vapor_command(const VaporArguments& arguments);

/// Daily stock, the monthly rule, what explains a difference, and how sure that is.
[[nodiscard]] Exit ledger_command(const LedgerArguments& arguments);

/// A delivery by gravity: rate, time, levels, pressure of the vapor, what stays in the hose.
[[nodiscard]] Exit delivery_command(const DeliveryArguments& arguments);

/// CSV files into the store; one row into it; everything as CSV files; a checked copy; what is there.
[[nodiscard]] Exit records_import_command(const RecordsArguments& arguments);
[[nodiscard]] Exit records_add_command(const RecordsArguments& arguments);
[[nodiscard]] Exit records_export_command(const RecordsArguments& arguments);
[[nodiscard]] Exit records_backup_command(const RecordsArguments& arguments);
[[nodiscard]] Exit records_list_command(const RecordsArguments& arguments);

/// Tests of the lines and their leak detectors: what temperature does to them, what a result proves.
[[nodiscard]] Exit line_test_command(const LineTestArguments& arguments);

/// Every requirement that the station lives under, with value, limit, margin and clause.
[[nodiscard]] Exit checks_command(const ChecksArguments& arguments);

/// The lesson of a station: pages with its numbers, what each part prevents, as a handout too.
[[nodiscard]] Exit lesson_command(const LessonArguments& arguments);

/// Every test, inspection and reading that comes back: last done, due, by whom; as a file for a calendar too.
[[nodiscard]] Exit calendar_command(const CalendarArguments& arguments);

/// Every part of the station along the course: sizes, ratings needed, counts, what to order, spares.
[[nodiscard]] Exit kit_command(const KitArguments& arguments);

/// Plan and sections to scale, for paper and for programs that draw.
[[nodiscard]] Exit draw_command(const DrawArguments& arguments);

/// Sheets to fill in, with the figures of the station beside the blanks; what was typed back against them.
[[nodiscard]] Exit sheets_command(const SheetsArguments& arguments);

/// Meters by their provings: errors against limits, cost, drift, what they explain of a ledger.
[[nodiscard]] Exit meter_command(const MeterArguments& arguments);

/// The workbench: a page in the browser, served to this machine alone, until Ctrl+C.
[[nodiscard]] Exit serve_command(const ServeArguments& arguments);

/// The generic parts that a site file can name.
[[nodiscard]] Exit shelf_command(const std::string& kind, bool json);

}  // namespace forecourse::cli
