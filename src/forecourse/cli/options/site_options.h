#pragma once

#include <CLI/CLI.hpp>
#include <string>

#include "forecourse/cli/site_source.h"

namespace forecourse::cli {

inline constexpr const char* on_words = "day by which tests are judged overdue: 2026-11-25 (default: today)";

/// What every command on a site file is told.
void add_site_options(CLI::App& command, SiteArguments& site);

/// A PDF beside the page, of a command whose report has one name.
template <class Arguments>
void add_pdf_options(CLI::App& command, Arguments& arguments, const std::string& name) {
  command.add_flag("--pdf", arguments.pdf, "also write " + name + ".pdf (with weasyprint)");
  command.add_option("--paper", arguments.paper, "of the PDF: a4 or letter (default: letter with US units, else a4)")
      ->check(CLI::IsMember({"a4", "letter"}));
}

}  // namespace forecourse::cli
