#pragma once

/// The description of a site file: every table and key once, with its member, its range and one sentence.
/// Reading (read.h), the JSON schema and the reference page (schema.h) are visitors of it.
///
/// To add a key: add the member to the struct, and one line to its `fields` function in fields/.
#include "forecourse/site/fields/fields_site.h"
