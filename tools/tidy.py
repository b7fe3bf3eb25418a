#!/usr/bin/env python3
"""clang-tidy over src/: all files, or only those that changed.

  tools/tidy.py BUILD_DIR all|changed

Changed is: against the commit in FORECOURSE_TIDY_BASE, else against the last commit before this one. A changed header
is checked through the source file of the same name, if there is one.

With all, the sources of a folder are read as one where they compile as one, else its halves (two files may each have a
helper of the same name): the headers, where most of the time goes, are then read once and not once for each file.
"""
import itertools
import json
import os
import shlex
import shutil
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


def git(*arguments):
    return subprocess.run(["git", "-C", str(ROOT), *arguments], capture_output=True, text=True)


def all_sources():
    return sorted((ROOT / "src").rglob("*.cpp"))


def changed_sources():
    base = os.environ.get("FORECOURSE_TIDY_BASE", "HEAD~1")
    if git("rev-parse", "--verify", "--quiet", base + "^{commit}").returncode:
        return all_sources()
    changed = git("diff", "--name-only", "--diff-filter=d", base, "--", "src").stdout.split()
    changed += git("ls-files", "--others", "--exclude-standard", "--", "src").stdout.split()
    sources = {(ROOT / name).with_suffix(".cpp") for name in changed if name.endswith((".cpp", ".h"))}
    return sorted(source for source in sources if source.exists())


def flags_of_sources(build):
    """The switches that decide how a source of ours is read, of all targets together."""
    commands = json.loads((build / "compile_commands.json").read_text())
    ours = [command for command in commands if Path(command["file"]).is_relative_to(ROOT / "src")]
    words = {word for command in ours for word in shlex.split(command["command"])}
    return sorted(word for word in words if word.startswith(("-I", "-D", "-isystem", "-std=")))


def together(build, flags):
    """The sources of each folder as few files that compile, each with the folder of its switches."""
    place = build / "tidy"
    shutil.rmtree(place, ignore_errors=True)
    place.mkdir()

    def units(sources):
        if len(sources) == 1:
            return [(sources[0], build)]
        one = place / ("_".join(sources[0].relative_to(ROOT / "src").with_suffix("").parts) + "_and_more.cpp")
        one.write_text("".join(f'#include "{source}"  // NOLINT(bugprone-suspicious-include)\n' for source in sources))
        read = subprocess.run(["g++", *flags, "-w", "-fsyntax-only", one], capture_output=True)
        half = len(sources) // 2
        return [(one, place)] if read.returncode == 0 else units(sources[:half]) + units(sources[half:])

    folders = [list(sources) for _, sources in itertools.groupby(all_sources(), key=lambda source: source.parent)]
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        files = list(itertools.chain(*pool.map(units, folders)))
    commands = [{"directory": str(place), "file": str(file), "arguments": ["c++", *flags, "-c", str(file)]}
                for file, switches in files if switches == place]
    (place / "compile_commands.json").write_text(json.dumps(commands))
    return files


def tidy(file, commands):
    # Warning switches of g++ that clang does not know are no fault of the code.
    run = subprocess.run(
        ["clang-tidy", "--quiet", "--extra-arg=-Wno-unknown-warning-option", f"--config-file={ROOT / '.clang-tidy'}",
         "-p", str(commands), str(file)], capture_output=True, text=True)
    noise = (" warning generated", " warnings generated", " warnings treated", " warning treated")
    told = [line for line in run.stderr.splitlines() if not any(word in line for word in noise)]
    print(run.stdout + "".join(line + "\n" for line in told), end="", flush=True)
    return run.returncode


def main():
    build, which = Path(sys.argv[1]).resolve(), sys.argv[2]
    if which == "all":
        files = together(build, flags_of_sources(build))
        print(f"clang-tidy: {len(all_sources())} files as {len(files)}", flush=True)
    else:
        files = [(source, build) for source in changed_sources()]
        print(f"clang-tidy: {len(files)} files", flush=True)
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        codes = list(pool.map(lambda file: tidy(*file), files))
    return 1 if any(codes) else 0


if __name__ == "__main__":
    sys.exit(main())
