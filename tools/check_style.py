#!/usr/bin/env python3
"""Cheap style checks over the tree. Each fault is printed as file:line: text; exit 1 if there is one.

layers      an include goes only to a folder that LAYERS allows, LAYERS runs one way, no study includes another
kernels     the pure folders include no I/O, clock, thread or random header
compilers   what wasm/ compiles uses no part of the library that the compiler for WebAssembly lacks
sources     each [key, place] of a source line is in docs/sources.bib, and each key there is cited somewhere
docs        in headers of fuel/ and parts/, parameters and results have a [unit], functions a source and an error
units       no unit factor (0.3048, 6894.757 ...) in code outside base/, nor in the page outside what is generated
tests       each test file lies in a folder that tests/CMakeLists.txt builds; physics tests name their source
words       no word that only means something to those who wrote it (see WORDS)
sizes       a file over 600 lines stands in tools/long_files.txt with a reason; a folder over 20 files is a warning
vocabulary  docs/vocabulary.md is there and holds a table
links       relative links in Markdown, and pages that code names, lead to a file or heading that exists

Usage: check_style.py [ROOT]
"""
import os
import re
import sys

PURE = ("base", "site", "fuel", "parts", "solvers", "network", "studies", "checks", "decide", "handover", "lesson")
PHYSICS = ("fuel", "parts")
CODE = (".h", ".cpp")
TEXT = CODE + (".py", ".sh", ".md", ".toml", ".txt", ".json", ".ts", ".tsx", ".mjs", ".css", ".html", ".bib", ".csv", "")
SKIPPED_FOLDERS = ("build", "out", "node_modules", ".git", "__pycache__")
IMPURE = re.compile(r"#\s*include\s*<(iostream|fstream|filesystem|cstdio|stdio\.h|print|chrono|thread|random|mutex)>")
WEB = ("base", "site", "fuel", "parts", "solvers", "network", "studies", "checks", "lesson")
LACKING = re.compile(r"\bstd::(ranges::\w+|bit_cast)\b")
OWN_INCLUDE = re.compile(r'\s*#\s*include\s*"forecourse/([^"]+)"')
CITATION = re.compile(r"\[([A-Za-z][\w:.-]*)\s*(,[^\];]*)?((?:;[^\]]*)?)\]")
NUMBER = re.compile(r"(?<![\w.])(?:\d[\d']*\.?[\d']*|\.\d[\d']*)(?:[eE][+-]?\d+)?(?=[fFlLuU]*(?![\w.]))")
GENERATED_UNITS = os.path.join("web", "src", "api", "units.ts")
NO_DOCUMENT = ("common practice, no source", "illustrative, no source", "from memory, not verified", "closed form", "law of nature")
LONGEST_FILE = 600
FULLEST_FOLDER = 20

# Split so that this file does not hold them itself.
WORDS = ("TO" + "DO", "FIX" + "ME", "/wo" + "rk/")

# Factors that turn one unit into another, in either direction. A number this close to one (1e-5) is taken for it.
UNIT_FACTORS = {
    6894.757293: "psi and Pa",
    2.307: "psi and ft of water",
    3386.389: "inHg and Pa",
    0.3048: "ft and m",
    0.0254: "in and m",
    25.4: "in and mm",
    6.30901964e-5: "gpm and m3/s",
    0.003785411784: "gal and m3",
    3.785411784: "gal and L",
    60000.0: "L/min and m3/s",
    459.67: "degF and degR",
    273.15: "degC and K",
    255.372222: "degF and K",
    0.45359237: "lb and kg",
    4.4482216: "lbf and N",
    16.018463: "lb/ft3 and kg/m3",
}
FAHRENHEIT = re.compile(r"[*/]\s*1\.8\b.*[+-]\s*32\b|[+-]\s*32(\.0)?\s*\)\s*([*/]\s*1\.8\b|\*\s*5(\.0)?\s*/\s*9)")


class Checker:
    """Reads the tree below `root` and collects faults and warnings as (path, line, text)."""

    def __init__(self, root):
        self.root = root
        self.source = os.path.join(root, "src", "forecourse")
        self.faults = []
        self.warnings = []
        self.layers = {}

    def fault(self, path, line, text):
        self.faults.append((os.path.relpath(path, self.root), line, text))

    def warn(self, path, line, text):
        self.warnings.append((os.path.relpath(path, self.root), line, text))

    def path(self, *parts):
        return os.path.join(self.root, *parts)

    def run(self):
        self.read_layers()
        for check in (self.check_includes, self.check_sources, self.check_docs, self.check_units, self.check_tests,
                      self.check_words, self.check_sizes, self.check_vocabulary, self.check_links):
            check()

    # LAYERS and includes

    def read_layers(self):
        path = self.path("LAYERS")
        for n, text in enumerate(lines(path), 1):
            text = text.split("#")[0].strip()
            if not text:
                continue
            (name,), allowed = (part.split() for part in text.split(":"))
            for dep in allowed:
                if dep not in self.layers:
                    self.fault(path, n, f"{name} leans on {dep}, which is not above it")
            self.layers[name] = set(allowed) | {name}

    def check_includes(self):
        for path in files(self.source, CODE):
            here = os.path.relpath(path, self.source).split(os.sep)
            if here[0] not in self.layers:
                self.fault(path, 1, f"folder {here[0]} is not in LAYERS")
                continue
            self.check_first_include(path)
            for n, text in enumerate(lines(path), 1):
                self.check_include(path, n, text, here)

    # This is what shows that a header compiles on its own: the build looks at those alone that have no source file.
    def check_first_include(self, path):
        header = os.path.splitext(path)[0] + ".h"
        if not path.endswith(".cpp") or not os.path.exists(header):
            return
        n, first = next(((n, text) for n, text in enumerate(lines(path), 1) if text.startswith("#include")), (1, ""))
        name = os.path.relpath(header, os.path.dirname(self.source)).replace(os.sep, "/")
        if first.strip() != f'#include "{name}"':
            self.fault(path, n, f'the first include must be "{name}"')

    def check_include(self, path, n, text, here):
        layer = here[0]
        impure = IMPURE.search(text) if layer in PURE else None
        if impure:
            self.fault(path, n, f"{layer} stays pure: no <{impure[1]}>")
        lacking = LACKING.search(text.split("//")[0]) if layer in WEB else None
        if lacking:
            self.fault(path, n, f"{layer} is compiled to WebAssembly too, where there is no std::{lacking[1]}")
        own = OWN_INCLUDE.match(text)
        if not own:
            return
        there = own[1].split("/")
        if there[0] not in self.layers[layer]:
            self.fault(path, n, f"{layer} may not include {there[0]} (see LAYERS)")
        # studies/<name>/ is one question; what stands directly in studies/ (Context, options) serves all.
        if layer == there[0] == "studies" and len(here) > 2 and len(there) > 2 and there[1] != here[1]:
            self.fault(path, n, f"study {here[1]} may not include study {there[1]}: shared work goes down")

    # Sources

    def check_sources(self):
        bib = self.path("docs", "sources.bib")
        known = self.read_bib(bib)
        used = set()
        for path, n, text in self.source_items():
            cited = citations(text)
            if not cited and not any(phrase in text for phrase in NO_DOCUMENT):
                self.fault(path, n, f"a source line needs [key, place] or one of: {'; '.join(NO_DOCUMENT)}")
            for key, place in cited:
                used.add(key)
                if key not in known:
                    self.fault(path, n, f"unknown source key {key}")
                if not place:
                    self.fault(path, n, f"source {key} lacks the place inside the document")
        for key in sorted(set(known) - used):
            self.fault(bib, known[key], f"source {key} is cited nowhere")

    def read_bib(self, path):
        known = {}
        if not os.path.exists(path):
            self.fault(path, 1, "the list of sources is missing")
            return known
        for n, text in enumerate(lines(path), 1):
            hit = re.match(r"@\w+\{([^,]+),", text)
            if hit and hit[1] in known:
                self.fault(path, n, f"source {hit[1]} is defined twice, first in line {known[hit[1]]}")
            elif hit:
                known[hit[1]] = n
        return known

    def source_items(self):
        for top in (self.source, self.path("tests")):
            for path in files(top, CODE):
                for n, block in comment_blocks(lines(path)):
                    for offset, tag, text in items(block):
                        if tag in ("\\source", "SOURCE:"):
                            yield path, n + offset, text
        for path in files(self.path("shelf"), (".toml",)):
            for n, text in enumerate(lines(path), 1):
                hit = re.match(r'\s*source\s*=\s*"(.*)"', text)
                if hit:
                    yield path, n, hit[1]

    # Documentation of physics headers

    def check_docs(self):
        for layer in PHYSICS:
            for path in files(os.path.join(self.source, layer), (".h",)):
                for n, block in comment_blocks(lines(path)):
                    self.check_docstring(path, n, block)

    def check_docstring(self, path, n, block):
        found = items(block)
        tags = {tag for _, tag, _ in found}
        if "\\return" in tags:
            for tag in ("\\source", "\\error"):
                if tag not in tags:
                    self.fault(path, n, f"docstring lacks {tag}")
        for offset, tag, text in found:
            if tag in ("\\param", "\\return") and not re.search(r"\[[^\]]+\]", text):
                self.fault(path, n + offset, f"no [unit] in: {tag} {text.strip()[:50]}")

    # Units

    def check_units(self):
        for path in files(self.source, CODE):
            layer = os.path.relpath(path, self.source).split(os.sep)[0]
            if layer == "base":
                continue
            for n, code in enumerate(code_only(lines(path)), 1):
                for what in sorted(set(unit_factors(code))):
                    self.fault(path, n, f"a unit factor ({what}) belongs in base/")
        for path in files(self.path("web", "src"), (".ts", ".tsx")):
            if os.path.relpath(path, self.root) == GENERATED_UNITS:
                continue
            for n, code in enumerate(code_only(lines(path)), 1):
                for what in sorted(set(unit_factors(code))):
                    self.fault(path, n, f"a unit factor ({what}) comes from {GENERATED_UNITS}")

    # Tests

    def check_tests(self):
        recipe = self.path("tests", "CMakeLists.txt")
        built = set()
        if os.path.exists(recipe):
            for hit in re.findall(r"foreach\(folder ([^)]*)\)", "\n".join(lines(recipe))):
                built |= set(hit.split())
        for path in files(self.path("tests"), ("_test.cpp",)):
            folder = os.path.relpath(path, self.path("tests")).split(os.sep)[0]
            if folder not in built:
                self.fault(path, 1, f"tests/CMakeLists.txt does not build folder {folder}")
            if folder in PHYSICS and not any("SOURCE:" in text for text in lines(path)):
                self.fault(path, 1, "a physics test names its published source (SOURCE: ...)")

    # Words, sizes, pages

    def check_words(self):
        for path in files(self.root, TEXT):
            for n, text in enumerate(lines(path), 1):
                for word in WORDS:
                    if re.search(r"(?<!\w)" + re.escape(word), text):
                        self.fault(path, n, f"'{word}' does not belong in the tree")

    def check_sizes(self):
        excused = self.read_long_files()
        count = {}
        for top in ("src", "tests", "tools", os.path.join("web", "src")):
            for path in files(self.path(top), CODE + (".py", ".ts", ".tsx", ".mjs")):
                folder = os.path.dirname(path)
                count[folder] = count.get(folder, 0) + 1
                length, name = len(lines(path)), os.path.relpath(path, self.root)
                if length > LONGEST_FILE and name not in excused:
                    self.fault(path, length, f"{length} lines: split it, or give a reason in tools/long_files.txt")
                if length > LONGEST_FILE:
                    excused.pop(name, None)
        for name, n in excused.items():
            self.fault(self.path("tools", "long_files.txt"), n, f"{name} is not over {LONGEST_FILE} lines (any more)")
        for folder, number in sorted(count.items()):
            if number > FULLEST_FOLDER:
                self.warn(folder, 1, f"{number} source files in one folder: it wants sub-folders")

    def read_long_files(self):
        path, excused = self.path("tools", "long_files.txt"), {}
        for n, text in enumerate(lines(path) if os.path.exists(path) else [], 1):
            name, _, reason = text.split("#")[0].partition(":")
            if name.strip() and not reason.strip():
                self.fault(path, n, f"no reason given for {name.strip()}")
            if name.strip():
                excused[name.strip()] = n
        return excused

    def check_vocabulary(self):
        path = self.path("docs", "vocabulary.md")
        if not os.path.exists(path):
            self.fault(path, 1, "the vocabulary is missing")
        elif not any(text.startswith("|") for text in lines(path)):
            self.fault(path, 1, "the vocabulary holds no table of terms")

    def check_links(self):
        for path in files(self.root, (".md",)):
            for n, text in prose(lines(path)):
                for target in re.findall(r"\]\(([^)\s]+)\)", text):
                    self.check_link(path, n, target)
        for path in files(self.source, CODE):
            for n, text in enumerate(lines(path), 1):
                for page in re.findall(r"docs/[\w./-]+\.md", text):
                    if not os.path.exists(self.path(page)):
                        self.fault(path, n, f"page is not there: {page}")

    def check_link(self, path, n, target):
        if re.match(r"[a-z]+:", target):
            return
        file, _, heading = target.partition("#")
        full = os.path.normpath(os.path.join(os.path.dirname(path), file)) if file else path
        if not os.path.exists(full):
            self.fault(path, n, f"link leads nowhere: {target}")
        elif heading and full.endswith(".md") and heading not in anchors(full):
            self.fault(path, n, f"no such heading: {target}")


def files(top, ends):
    """Paths below `top` whose name has one of the endings `ends` ("" is: no ending at all), sorted."""
    for folder, subs, names in os.walk(top):
        subs[:] = sorted(s for s in subs if s not in SKIPPED_FOLDERS)
        for name in sorted(names):
            if name.endswith(tuple(e for e in ends if e)) or ("" in ends and "." not in name):
                yield os.path.join(folder, name)


def lines(path):
    """Lines of a text file; a file that is not UTF-8 (some bad site files) is read with marks in their place."""
    with open(path, encoding="utf-8", errors="replace") as text:
        return text.read().removesuffix("\n").split("\n")


def comment_blocks(text):
    """(first line number, comment lines without slashes) of each run of // or /// lines."""
    block, start = [], 0
    for n, line in enumerate(text + [""], 1):
        hit = re.match(r"\s*//[/!]?<?\s?(.*)$", line)
        if hit:
            start = start if block else n
            block.append(hit[1])
        elif block:
            yield start, block
            block = []


def items(block):
    """(offset, tag, text) of each \\tag or SOURCE: in a comment block; it lasts to the next one or an empty line."""
    found, open_item = [], False
    for offset, line in enumerate(block):
        hit = re.match(r"\s*(\\[a-z]+|SOURCE:)\s*(.*)$", line)
        if hit:
            found.append((offset, hit[1], hit[2]))
        elif open_item and line.strip():
            found[-1] = (*found[-1][:2], found[-1][2] + " " + line.strip())
        open_item = bool(found) and bool(line.strip())
    return found


def citations(text):
    """(key, place) of each [key, place; key, place] in a source line."""
    found = []
    for hit in CITATION.finditer(text):
        for part in hit[0][1:-1].split(";"):
            key, _, place = part.partition(",")
            if re.fullmatch(r"[A-Za-z][\w:.-]*", key.strip()):
                found.append((key.strip(), place.strip()))
    return found


def code_only(text):
    """The lines with comments and the contents of strings taken out."""
    inside = False
    for line in text:
        line = re.sub(r'"(\\.|[^"\\])*"', '""', line)
        line = re.sub(r"/\*.*?\*/", "", line)
        if inside:
            inside = "*/" not in line
            line = "" if inside else line.split("*/", 1)[1]
        line = line.split("//")[0]
        if "/*" in line:
            line, inside = line.split("/*")[0], True
        yield line


def unit_factors(code):
    """What the numbers in a line of code convert, if they are near a known unit factor or its reciprocal."""
    found = ["degF and degC"] if FAHRENHEIT.search(code) else []
    for text in NUMBER.findall(code):
        value = float(text.replace("'", ""))
        for factor, what in UNIT_FACTORS.items():
            if abs(value - factor) < 1e-5 * factor or abs(value * factor - 1) < 1e-5:
                found.append(what)
    return found


def prose(text):
    """(line number, text) of a Markdown page without code blocks and code spans."""
    fenced = False
    for n, line in enumerate(text, 1):
        if line.lstrip().startswith("```"):
            fenced = not fenced
        elif not fenced:
            yield n, re.sub(r"`[^`]*`", "", line)


def anchors(path):
    """The heading anchors of a Markdown page."""
    heads = [re.match(r"#+\s+(.*)$", line) for _, line in enumerate(lines(path))]
    return {re.sub(r"[^\w\- ]", "", h[1].lower()).strip().replace(" ", "-") for h in heads if h}


def main():
    checker = Checker(sys.argv[1] if len(sys.argv) > 1 else ".")
    checker.run()
    for path, line, text in checker.warnings:
        print(f"{path}:{line}: warning: {text}")
    for path, line, text in checker.faults:
        print(f"{path}:{line}: {text}")
    print(f"style: {len(checker.faults)} fault(s), {len(checker.warnings)} warning(s)")
    return 1 if checker.faults else 0


if __name__ == "__main__":
    sys.exit(main())
