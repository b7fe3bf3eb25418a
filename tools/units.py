#!/usr/bin/env python3
"""Joins sources into few that are compiled in their place: the headers, where most of the time goes, are read once.

  units.py OUT MOST_LINES ROOT [FOLDER...] < names of sources

Each unit holds sources of one of the FOLDERs of ROOT (several joined by + count as one; none named: each that the
sources have), in their order, as long as it has no more than MOST_LINES lines and no two of its sources have a helper
of the same name. Prints the units; writes those that changed, and removes what is none any more.
"""
import re
import sys
from pathlib import Path

HEADERS = Path(__file__).resolve().parent.parent / "src" / "forecourse"
ALIAS = re.compile(r"using (\w+) = (.*)")
BROUGHT = re.compile(r"using [\w:]+::(\w+);")
TYPE = re.compile(r"(?:enum class|enum|class|struct) (\w+)")
DECLARED = re.compile(r"([A-Za-z_]\w*)(\(|\[| =|\{|;)")
NAMESPACE = re.compile(r"^namespace ([\w:]+) {$", re.M)
PUBLIC = re.compile(r"^(?:enum class|enum|class|struct|using) (\w+)\b(?!;)", re.M)
OPENED = re.compile(r"^using namespace (\w+);", re.M)
NAMED = re.compile(r"(?<![\w.>:])([A-Za-z_]\w*)(?:<[^<>()]*>)?[({]")


def namespace_of(text):
    return "".join(NAMESPACE.findall(text)[:1]) + "::"


def public_types(root):
    """Types in headers of the project and of ROOT as (name, namespace); a helper's type of that name would hide one from other sources."""
    out = set()
    for path in {*HEADERS.rglob("*.h"), *root.rglob("*.h")}:
        text = path.read_text()
        out.update((name, namespace_of(text)) for name in PUBLIC.findall(text))
    return out


class Source:
    def __init__(self, path, public):
        self.path = path
        text = path.read_text()
        self.lines = text.count("\n")
        self.opened = set(OPENED.findall(text))
        self.helpers = {}  # name: its definition where that may be said twice, else None
        self.types = set()
        self.callable = set()
        self.namespace = namespace_of(text)
        inside = False
        for line in text.splitlines():
            if line == "namespace {":
                inside = True
            elif line.startswith("}  // namespace"):
                inside = False
            elif inside and re.match(r"(?!namespace |TEST|INSTANTIATE)[A-Za-z]", line):
                self.take(line)
        self.called = set(NAMED.findall(text)) - self.callable
        self.hides = any(name in self.types and self.namespace.startswith(within) for name, within in public)

    def take(self, line):
        """Notes what a line declares."""
        if alias := ALIAS.match(line):
            self.helpers[alias[1]] = alias[2]
            if not alias[2].endswith(f"::{alias[1]};"):
                self.types.add(alias[1])
        elif brought := BROUGHT.match(line):
            self.helpers[brought[1]] = brought[0]
        elif kind := TYPE.match(line):
            self.helpers[kind[1]] = None
            self.callable.add(kind[1])
            self.types.add(kind[1])
            if not line.startswith("enum class"):
                self.helpers.update((name, None) for name in re.findall(r"(\w+)(?:,| })", line))
        else:
            found = DECLARED.findall(line)
            self.helpers.update((name, None) for name, _ in found)
            self.callable.update(name for name, mark in found[:1] if mark == "(")

    def clashes(self, other):
        if self.hides or other.hides or self.opened != other.opened:
            return True
        shared = self.helpers.keys() & other.helpers.keys() if self.namespace == other.namespace else ()
        if any(self.helpers[name] is None or self.helpers[name] != other.helpers[name] for name in shared):
            return True
        return self.is_heard_by(other) or other.is_heard_by(self)

    def is_heard_by(self, other):
        return other.namespace.startswith(self.namespace) and bool(self.callable & other.called)


def units(sources, most_lines):
    out = []
    for source in sources:
        for unit in out:
            if sum(one.lines for one in unit) + source.lines <= most_lines and not any(map(source.clashes, unit)):
                unit.append(source)
                break
        else:
            out.append([source])
    return out


def main():
    out, most_lines, root = Path(sys.argv[1]), int(sys.argv[2]), Path(sys.argv[3]).resolve()
    paths = [Path(line) for line in sys.stdin.read().split()]
    public, written = public_types(root), set()
    seen_from = root.parent if root == HEADERS else root  # where the compiler looks for what is included
    out.mkdir(parents=True, exist_ok=True)
    for folders in sys.argv[4:] or sorted({path.relative_to(root).parts[0] for path in paths}):
        within = folders.split("+")
        sources = [Source(path, public) for path in paths if path.relative_to(root).parts[0] in within]
        for number, unit in enumerate(units(sources, most_lines), 1):
            file = out / f"{folders.replace('+', '_')}_{number}.cpp"
            text = "".join(f'#include "{source.path.relative_to(seen_from)}"  // NOLINT(bugprone-suspicious-include)\n'
                           for source in unit)
            if not file.exists() or file.read_text() != text:
                file.write_text(text)
            written.add(file)
            print(file)
    for stale in set(out.glob("*.cpp")) - written:
        stale.unlink()


if __name__ == "__main__":
    main()
