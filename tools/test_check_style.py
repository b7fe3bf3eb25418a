#!/usr/bin/env python3
"""Tests of check_style.py: a small clean tree passes, and each fault, made once in it, is reported at its place."""
import os
import sys
import tempfile
import unittest

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
import check_style  # noqa: E402

HEADER = """#pragma once
/// Pressure loss of a pipe, see docs/theory/loss.md.
///
/// \\param length pipe length,
///   [m], >= 0
/// \\param turbulent whether the flow is turbulent [1]
/// \\return pressure loss [Pa]
/// \\source [book_2011, eq. 3-4] and so on.
/// \\error rounding only.
double pressure_loss(double length, bool turbulent);
"""

CLEAN = {
    "LAYERS": "# order\nbase:\nfuel: base\nparts: base fuel\nstudies: base fuel parts\nreport: base studies\n",
    "src/forecourse/base/units.h": "constexpr double meters_per_foot = 0.3048;\n",
    "src/forecourse/parts/loss.h": HEADER,
    "src/forecourse/parts/loss.cpp": '#include "forecourse/parts/loss.h"\n// 0.3048 in words\ndouble k = 1.8;\n',
    "src/forecourse/studies/context.h": "struct Context;\n",
    "src/forecourse/studies/flow/flow.h": '#include "forecourse/studies/context.h"\n',
    "src/forecourse/studies/surge/surge.h": "struct Surge;\n",
    "src/forecourse/report/text.cpp": "#include <iostream>\n",
    "tests/CMakeLists.txt": "foreach(folder base fuel\n    parts)\n",
    "tests/parts/loss_test.cpp": "// SOURCE: [book_2011, table 2; paper-1980,\n//   p. 4]\n",
    "tools/long_files.txt": "# none\n",
    "docs/sources.bib": "@book{book_2011, title={B}}\n@article{paper-1980, title={P}}\n",
    "docs/vocabulary.md": "# Words\n\n| term | source |\n|---|---|\n",
    "docs/theory/loss.md": "# Loss law\n\n[there](../vocabulary.md#words), [here](#loss-law)\n\n```\n[x](nowhere.md)\n```\n",
}

# what is changed in the clean tree, and the one fault that must be reported
FAULTS = [
    ("folder unknown to LAYERS", {"src/forecourse/attic/x.h": "struct X;\n"},
     "src/forecourse/attic/x.h:1: folder attic is not in LAYERS"),
    ("LAYERS runs backward", {"LAYERS": "base: fuel\nfuel:\nparts: fuel base\nstudies: base\nreport: base\n"},
     "LAYERS:1: base leans on fuel, which is not above it"),
    ("include against the direction", {"src/forecourse/fuel/x.h": '\n#include "forecourse/parts/loss.h"\n'},
     "src/forecourse/fuel/x.h:2: fuel may not include parts (see LAYERS)"),
    ("study includes a study", {"src/forecourse/studies/flow/f.cpp": '#include "forecourse/studies/surge/surge.h"\n'},
     "src/forecourse/studies/flow/f.cpp:1: study flow may not include study surge: shared work goes down"),
    ("own header not first", {"src/forecourse/parts/loss.cpp": '#include <vector>\n#include "forecourse/parts/loss.h"\n'},
     'src/forecourse/parts/loss.cpp:1: the first include must be "forecourse/parts/loss.h"'),
    ("clock in a kernel", {"src/forecourse/base/now.cpp": "#include <chrono>\n"},
     "src/forecourse/base/now.cpp:1: base stays pure: no <chrono>"),
    ("algorithm that a compiler lacks", {"src/forecourse/base/x.cpp": "\nint i = std::ranges::max(a);\n"},
     "src/forecourse/base/x.cpp:2: base is compiled to WebAssembly too, where there is no std::ranges::max"),
    ("unknown source key", {"src/forecourse/fuel/x.h": "/// One.\n/// \\source [book_2012, eq. 1]\n"},
     "src/forecourse/fuel/x.h:2: unknown source key book_2012"),
    ("source without a place", {"src/forecourse/fuel/x.h": "/// \\source [book_2011]\n"},
     "src/forecourse/fuel/x.h:1: source book_2011 lacks the place inside the document"),
    ("source without a key", {"src/forecourse/fuel/x.h": "/// \\source a good book\n"},
     "src/forecourse/fuel/x.h:1: a source line needs [key, place] or one of: common practice, no source; "
     "illustrative, no source; from memory, not verified; closed form; law of nature"),
    ("shelf part with an unknown source", {"shelf/hose.toml": '[hose]\nsource = "[catalog, p. 3]"\n'},
     "shelf/hose.toml:2: unknown source key catalog"),
    ("source cited nowhere", {"docs/sources.bib": CLEAN["docs/sources.bib"] + "@misc{idle, title={I}}\n"},
     "docs/sources.bib:3: source idle is cited nowhere"),
    ("source defined twice", {"docs/sources.bib": CLEAN["docs/sources.bib"] + "@misc{book_2011, title={I}}\n"},
     "docs/sources.bib:3: source book_2011 is defined twice, first in line 1"),
    ("parameter without a unit", {"src/forecourse/parts/loss.h": HEADER.replace("[m], ", "")},
     "src/forecourse/parts/loss.h:4: no [unit] in: \\param length pipe length, >= 0"),
    ("result without a unit", {"src/forecourse/parts/loss.h": HEADER.replace(" [Pa]", "")},
     "src/forecourse/parts/loss.h:7: no [unit] in: \\return pressure loss"),
    ("function without an error", {"src/forecourse/parts/loss.h": HEADER.replace("/// \\error", "/// error")},
     "src/forecourse/parts/loss.h:2: docstring lacks \\error"),
    ("function without a source", {"src/forecourse/parts/loss.h": HEADER.replace("/// \\source [b", "/// [b")},
     "src/forecourse/parts/loss.h:2: docstring lacks \\source"),
    ("unit factor", {"src/forecourse/parts/x.cpp": "double a = 1;\ndouble p = a * 6'894.757e0;\n"},
     "src/forecourse/parts/x.cpp:2: a unit factor (psi and Pa) belongs in base/"),
    ("unit factor upside down", {"src/forecourse/parts/x.cpp": "double p = a * 3.28084f;\n"},
     "src/forecourse/parts/x.cpp:1: a unit factor (ft and m) belongs in base/"),
    ("degrees Fahrenheit", {"src/forecourse/parts/x.cpp": "double c = (f - 32.0) / 1.8;\n"},
     "src/forecourse/parts/x.cpp:1: a unit factor (degF and degC) belongs in base/"),
    ("unit factor in the page", {"web/src/draw/x.ts": "const foot = 0.3048;\n"},
     "web/src/draw/x.ts:1: a unit factor (ft and m) comes from web/src/api/units.ts"),
    ("test that is not built", {"tests/report/text_test.cpp": "\n"},
     "tests/report/text_test.cpp:1: tests/CMakeLists.txt does not build folder report"),
    ("physics test without a source", {"tests/fuel/x_test.cpp": "\n"},
     "tests/fuel/x_test.cpp:1: a physics test names its published source (SOURCE: ...)"),
    ("left-over note", {"docs/theory/x.md": "# X\n" + check_style.WORDS[0] + ": finish\n"},
     f"docs/theory/x.md:2: '{check_style.WORDS[0]}' does not belong in the tree"),
    ("path of one machine", {"run": "cd " + check_style.WORDS[2] + "main\n"},
     f"run:1: '{check_style.WORDS[2]}' does not belong in the tree"),
    ("long file", {"src/forecourse/base/x.cpp": "//\n" * 601},
     "src/forecourse/base/x.cpp:601: 601 lines: split it, or give a reason in tools/long_files.txt"),
    ("long file without a reason", {"src/forecourse/base/x.cpp": "//\n" * 601,
                                    "tools/long_files.txt": "src/forecourse/base/x.cpp:\n"},
     "tools/long_files.txt:1: no reason given for src/forecourse/base/x.cpp"),
    ("excuse no longer needed", {"tools/long_files.txt": "src/forecourse/base/units.h: a table\n"},
     "tools/long_files.txt:1: src/forecourse/base/units.h is not over 600 lines (any more)"),
    ("no vocabulary", {"docs/vocabulary.md": None, "docs/theory/loss.md": "# Loss\n"},
     "docs/vocabulary.md:1: the vocabulary is missing"),
    ("empty vocabulary", {"docs/vocabulary.md": "# Words\n"},
     "docs/vocabulary.md:1: the vocabulary holds no table of terms"),
    ("link to nowhere", {"README.md": "[x](docs/no.md)\n"}, "README.md:1: link leads nowhere: docs/no.md"),
    ("link to no heading", {"README.md": "[x](docs/vocabulary.md#no)\n"},
     "README.md:1: no such heading: docs/vocabulary.md#no"),
    ("code names a missing page", {"src/forecourse/base/x.h": "// see docs/theory/x.md\n"},
     "src/forecourse/base/x.h:1: page is not there: docs/theory/x.md"),
]


def check(changes):
    """Faults and warnings, as printed, of the clean tree with `changes` (path: text, or None for no such file)."""
    with tempfile.TemporaryDirectory() as root:
        for path, text in (CLEAN | changes).items():
            if text is not None:
                os.makedirs(os.path.join(root, os.path.dirname(path)), exist_ok=True)
                with open(os.path.join(root, path), "w", encoding="utf-8") as file:
                    file.write(text)
        checker = check_style.Checker(root)
        checker.run()
        return [[f"{p}:{n}: {text}" for p, n, text in found] for found in (checker.faults, checker.warnings)]


class CheckStyle(unittest.TestCase):
    maxDiff = None

    def test_clean_tree_passes(self):
        self.assertEqual(check({}), [[], []])

    def test_each_fault_is_reported_alone_and_at_its_place(self):
        for name, changes, expected in FAULTS:
            with self.subTest(name):
                self.assertEqual(check(changes), [[expected], []])

    def test_long_file_with_a_reason_passes(self):
        changes = {"src/forecourse/base/x.cpp": "//\n" * 601, "tools/long_files.txt": "src/forecourse/base/x.cpp: why\n"}
        self.assertEqual(check(changes), [[], []])

    def test_full_folder_is_a_warning(self):
        changes = {f"src/forecourse/base/f{i}.h": "\n" for i in range(20)}
        self.assertEqual(check(changes), [[], ["src/forecourse/base:1: 21 source files in one folder: "
                                               "it wants sub-folders"]])

    def test_bytes_that_are_not_utf_8_are_no_crash(self):
        with tempfile.NamedTemporaryFile(suffix=".toml") as file:
            file.write(b"a = \xff\n")
            file.flush()
            self.assertEqual(len(check_style.lines(file.name)), 1)


if __name__ == "__main__":
    unittest.main()
