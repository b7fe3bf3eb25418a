#include "forecourse/cli/sheets_workbook.h"

#include <xlsxwriter.h>

#include <algorithm>
#include <array>

#include "forecourse/cli/console.h"
#include "forecourse/store/readings/read_sheet_readings.h"

namespace forecourse::cli {
namespace {

constexpr double narrow = 14.0;
constexpr double wide = 44.0;

/// The look of heads, of what is told, and of what is filled in.
struct Formats {
  explicit Formats(lxw_workbook* book)
      : head(workbook_add_format(book)), told(workbook_add_format(book)), blank(workbook_add_format(book)) {
    format_set_bold(head);
    for (lxw_format* one : {told, blank}) {
      format_set_text_wrap(one);
      format_set_align(one, LXW_ALIGN_VERTICAL_TOP);
    }
    format_set_border(blank, LXW_BORDER_THIN);
  }

  lxw_format* head;
  lxw_format* told;
  lxw_format* blank;
};

bool is_blank(const std::string& column) {
  constexpr std::array<const char*, 5> blanks{"value", "by", "day", "time", "note"};
  return std::find(blanks.begin(), blanks.end(), column) != blanks.end();
}

lxw_worksheet* add_sheet(lxw_workbook* book, const std::string& name, const Formats& formats) {
  lxw_worksheet* sheet = workbook_add_worksheet(book, name.c_str());
  const std::vector<std::string>& columns = store::sheet_columns();
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const auto at = static_cast<lxw_col_t>(c);
    worksheet_write_string(sheet, 0, at, columns[c].c_str(), formats.head);
    worksheet_set_column(sheet, at, at, columns[c] == "what" || columns[c] == "computed" ? wide : narrow, nullptr);
  }
  worksheet_freeze_panes(sheet, 1, 0);
  worksheet_set_landscape(sheet);
  worksheet_fit_to_pages(sheet, 1, 0);
  return sheet;
}

void add_row(lxw_worksheet* sheet, lxw_row_t at, const std::vector<std::string>& cells, const Formats& formats) {
  const std::vector<std::string>& columns = store::sheet_columns();
  for (std::size_t c = 0; c < columns.size() && c < cells.size(); ++c) {
    lxw_format* format = is_blank(columns[c]) ? formats.blank : formats.told;
    worksheet_write_string(sheet, at, static_cast<lxw_col_t>(c), cells[c].c_str(), format);
  }
}

}  // namespace

bool write_sheets_workbook(const std::string& file, const std::vector<std::vector<std::string>>& rows) {
  lxw_workbook* book = workbook_new(file.c_str());
  lxw_error error = LXW_ERROR_CREATING_XLSX_FILE;
  if (book != nullptr) {
    const Formats formats(book);
    lxw_worksheet* sheet = nullptr;
    std::string name;
    lxw_row_t at = 0;
    for (const std::vector<std::string>& row : rows) {
      if (sheet == nullptr || row.front() != name) {
        name = row.front();
        sheet = add_sheet(book, name, formats);
        at = 0;
      }
      add_row(sheet, ++at, row, formats);
    }
    error = workbook_close(book);
  }
  if (error == LXW_NO_ERROR) return true;
  print_error("error: cannot write '" + file + "': " + lxw_strerror(error) + "\n");
  return false;
}

}  // namespace forecourse::cli
