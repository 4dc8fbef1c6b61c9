"""Prints what the core and the worked board take on the small target, from the compiled objects
(GNU size: text and data lie in flash, data and bss in RAM) and the compiler's stack figures."""

import pathlib
import subprocess
import sys


def measure(size, path):
    text, data, bss = subprocess.run([size, str(path)], capture_output=True, text=True, check=True).stdout.splitlines()[
        1
    ].split()[:3]
    return int(text) + int(data), int(data) + int(bss)


def deepest_frame(folder):
    frames = []
    for usage in folder.rglob("*.su"):
        for line in usage.read_text().splitlines():
            place, size, _ = line.split("\t")
            frames.append((int(size), place.rsplit(":", 1)[1]))
    return max(frames)


def main():
    size, build = sys.argv[1], pathlib.Path(sys.argv[2])
    print("| part | flash, bytes | RAM, bytes |\n|---|---:|---:|")
    flash = ram = 0
    for path in sorted((build / "arm/core").glob("*.o")):
        part = measure(size, path)
        flash, ram = flash + part[0], ram + part[1]
        print(f"| core/{path.stem}.c | {part[0]} | {part[1]} |")
    print(f"| **core, all parts** | **{flash}** | **{ram}** |")
    whole = measure(size, build / "node.elf")
    print(f"| **whole program for the worked board** | **{whole[0]}** | **{whole[1]}** |")
    bytes_, function = deepest_frame(build / "arm")
    print(f"\nOf 196,608 bytes of flash and 20,480 of RAM. Largest stack frame: {bytes_} bytes, in `{function}`.")


if __name__ == "__main__":
    main()
