"""Puts the tables that the build has computed into the notes, between `<!-- NAME.md -->` and `<!-- end -->`."""

import pathlib
import re
import sys

MARKED = re.compile(r"<!-- ([a-z-]+\.md) -->\n.*?<!-- end -->", re.DOTALL)


def main():
    build, notes = map(pathlib.Path, sys.argv[1:3])
    for note in (*notes.glob("*.md"), notes / "firmware/README.md"):
        text = note.read_text(encoding="utf-8")

        def table(found):
            computed = (build / found.group(1)).read_text(encoding="utf-8").strip()
            return f"<!-- {found.group(1)} -->\n{computed}\n<!-- end -->"

        pasted = MARKED.sub(table, text)
        if pasted != text:
            note.write_text(pasted, encoding="utf-8")
            print(f"{note.name}: brought up to date")


if __name__ == "__main__":
    main()
