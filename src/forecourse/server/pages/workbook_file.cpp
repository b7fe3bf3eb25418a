#include "forecourse/server/pages/workbook_file.h"

#include <xlsxwriter.h>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <iterator>

#include "forecourse/server/pages/own_folder.h"

namespace forecourse::server {
namespace {

constexpr double column_width = 16.0;

/// A sheet's name: letters that a spreadsheet does not take become blanks, and 31 of them at most.
std::string sheet_name(std::string name) {
  for (char& c : name) {
    if (std::string("[]:*?/\\'").find(c) != std::string::npos) c = ' ';
  }
  constexpr std::size_t longest = 31;
  return name.substr(0, longest);
}

/// A sheet with its heads, which stay in view.
lxw_worksheet* add_empty_sheet(lxw_workbook* book, const std::string& name, const std::vector<std::string>& heads) {
  lxw_worksheet* sheet = workbook_add_worksheet(book, sheet_name(name).c_str());
  if (sheet == nullptr) sheet = workbook_add_worksheet(book, nullptr);
  lxw_format* bold = workbook_add_format(book);
  format_set_bold(bold);
  for (std::size_t i = 0; i < heads.size(); ++i)
    worksheet_write_string(sheet, 0, static_cast<lxw_col_t>(i), heads[i].c_str(), bold);
  worksheet_set_column(sheet, 0, static_cast<lxw_col_t>(heads.size() - 1), column_width, nullptr);
  worksheet_freeze_panes(sheet, 1, 0);
  return sheet;
}

void add_sheet(lxw_workbook* book, const report::CellTable& table) {
  lxw_worksheet* sheet = add_empty_sheet(book, table.name, table.heads);
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    for (std::size_t i = 0; i < table.rows[r].size(); ++i) {
      const auto row = static_cast<lxw_row_t>(r + 1);
      const auto column = static_cast<lxw_col_t>(i);
      // A string cell is never a formula, whatever it begins with.
      if (const auto* text = std::get_if<std::string>(&table.rows[r][i]))
        worksheet_write_string(sheet, row, column, text->c_str(), nullptr);
      if (const auto* value = std::get_if<double>(&table.rows[r][i]))
        worksheet_write_number(sheet, row, column, *value, nullptr);
    }
  }
}

void add_sheet(lxw_workbook* book, const report::NumberTable& table) {
  lxw_worksheet* sheet = add_empty_sheet(book, table.name, table.heads);
  std::vector<lxw_format*> formats;
  for (const int decimals : table.decimals) {
    formats.push_back(workbook_add_format(book));
    format_set_num_format(formats.back(),
                          decimals > 0 ? ("0." + std::string(static_cast<std::size_t>(decimals), '0')).c_str() : "0");
  }
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    for (std::size_t i = 0; i < table.rows[r].size(); ++i) {
      if (table.rows[r][i])
        worksheet_write_number(sheet, static_cast<lxw_row_t>(r + 1), static_cast<lxw_col_t>(i), *table.rows[r][i],
                               formats[i]);
    }
  }
}

template <class Table>
std::string write(const std::string& file, const std::vector<Table>& tables) {
  lxw_workbook* book = workbook_new(file.c_str());
  if (book != nullptr) {
    for (const Table& table : tables) add_sheet(book, table);
  }
  const lxw_error error = book != nullptr ? workbook_close(book) : LXW_ERROR_CREATING_XLSX_FILE;
  return error == LXW_NO_ERROR ? std::string() : lxw_strerror(error);
}

}  // namespace

std::string write_workbook(const std::string& file, const std::vector<report::NumberTable>& tables) {
  return write(file, tables);
}

std::string write_workbook(const std::string& file, const std::vector<report::CellTable>& tables) {
  return write(file, tables);
}

std::string make_workbook(std::string& bytes, const std::vector<report::CellTable>& tables) {
  const OwnFolder folder;
  if (folder.path().empty()) return std::string("no folder for the file can be made: ") + std::strerror(errno);
  const std::string file = folder.path() + "/tables.xlsx";
  if (std::string why = write_workbook(file, tables); !why.empty()) return why;
  std::ifstream in(file, std::ios::binary);
  bytes.assign(std::istreambuf_iterator<char>(in), {});
  return in.good() ? std::string() : "the file that was written cannot be read";
}

}  // namespace forecourse::server
