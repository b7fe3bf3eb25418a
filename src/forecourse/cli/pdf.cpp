#include "forecourse/cli/pdf.h"

#include "forecourse/cli/console.h"

namespace forecourse::cli {

bool write_pdf(const std::string& file, const std::string& report, report::html::Paper paper) {
  const server::PdfMade made = server::write_pdf(file, report, paper);
  if (made.good()) return true;
  print_error(file + ": error: not written: " + made.error + "\n" +
              (made.hint.empty() ? "" : "  hint: " + made.hint + "\n"));
  return false;
}

}  // namespace forecourse::cli
