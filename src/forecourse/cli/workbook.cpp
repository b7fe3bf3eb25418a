#include "forecourse/cli/workbook.h"

#include "forecourse/cli/console.h"
#include "forecourse/server/pages/workbook_file.h"

namespace forecourse::cli {
namespace {

bool is_written(const std::string& file, const std::string& why) {
  if (!why.empty()) print_error("error: cannot write '" + file + "': " + why + "\n");
  return why.empty();
}

}  // namespace

bool write_workbook(const std::string& file, const std::vector<report::NumberTable>& tables) {
  return is_written(file, server::write_workbook(file, tables));
}

bool write_workbook(const std::string& file, const std::vector<report::CellTable>& tables) {
  return is_written(file, server::write_workbook(file, tables));
}

}  // namespace forecourse::cli
