#pragma once

#include <string>

namespace forecourse::site {

/// The JSON schema (draft 2020-12) of a site file, for editors and web forms. Generated from fields/; the same text
/// for the same version of the program. TOML dates count as texts of format `date`.
[[nodiscard]] std::string site_schema();

/// All tables and keys of a site file with their units and sentences, as a page of Markdown.
[[nodiscard]] std::string site_reference();

}  // namespace forecourse::site
