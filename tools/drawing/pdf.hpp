// HTML pages as PDF, by a program that is installed beside this one.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace dewgap::tools {

/// A program that makes PDF of HTML, and its arguments; HTML and PDF are paths.
struct PdfProgram {
  std::string name;
  std::vector<std::string> arguments;  ///< "HTML" and "PDF" stand for the files
};

/// For pages of plain paper: weasyprint first, then chromium.
const std::vector<PdfProgram>& paper_programs();
/// For pages that a browser lays out: chromium.
const std::vector<PdfProgram>& browser_programs();

/// The PDF's bytes, by the first of the programs that is found in `search_path` (as PATH, folders between
/// colons). A Failure of file trouble that says what to install when none is found, or when the one found
/// fails; `verb` names who asks. The same page does not give the same bytes: PDF carries the time.
std::string pdf_of_page(std::string_view verb, std::string_view html, const std::vector<PdfProgram>& programs,
                        const std::string& search_path);

/// The PATH of this process; empty when there is none.
std::string program_search_path();

}  // namespace dewgap::tools
