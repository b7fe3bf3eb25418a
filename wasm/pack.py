#!/usr/bin/env python3
"""Puts a WebAssembly module into the script that starts it, and packs it alone:  pack.py SCRIPT MODULE OUT PACKED"""
import base64
import gzip
import sys
from pathlib import Path

script, module, out, alone = map(Path, sys.argv[1:])
packed = base64.b64encode(gzip.compress(module.read_bytes(), 9, mtime=0)).decode()
before, after = script.read_text().split('"@ENGINE@"')
out.write_text(f'{before}"{packed}"{after}')
alone.write_text(packed)
