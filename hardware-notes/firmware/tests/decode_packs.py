"""Reads packs from build/sample_packs with decoders that are not ours (Python's json, and
cbor2) and compares each value, exactly, with the sample that the firmware put in.

Names and units are those of the wire contract; labels those of RFC 8428 table 4."""

import json
import subprocess
import sys
from decimal import Decimal

try:
    import cbor2
except ImportError:
    cbor2 = None

MISSING = -(2**31)
LABELS = {-3: "bt", -2: "bn", 0: "n", 1: "u", 2: "v"}


def resolve(records):
    """RFC 8428 section 4.6: base fields apply to this record and those after it."""
    base_name, base_time, samples = "", 0, {}
    for record in records:
        base_name = record.get("bn", base_name)
        base_time = record.get("bt", base_time)
        name = base_name + record["n"]
        assert name.startswith("urn:dev:mac:02a1c0fffe000007:"), name
        quantity = name.rsplit(":", 1)[1]
        sample = samples.setdefault(base_time, {})
        assert quantity not in sample, f"{quantity} twice at {base_time}"
        sample[quantity] = (record["u"], Decimal(record["v"]))
    return samples


def expected(words):
    """What the sample's line says must be on the wire."""
    (_, time, counted, ins, outs, weight, deviation, load, cell, box, battery, boot, seq) = map(int, words)
    want = {"boot": ("count", Decimal(boot))}
    if seq:
        want["seq"] = ("count", Decimal(seq))
    if counted:
        want["in"] = ("count", Decimal(ins))
        want["out"] = ("count", Decimal(outs))
    if weight != MISSING:
        want["weight"] = ("kg", Decimal(weight).scaleb(-3))
        if deviation != MISSING:
            want["weight-sd"] = ("kg", Decimal(deviation).scaleb(-3))
    elif load != MISSING:
        want["load"] = ("count", Decimal(load))
    for name, unit, value, places in (("cell", "Cel", cell, 2), ("box", "Cel", box, 2), ("battery", "V", battery, 3)):
        if value != MISSING:
            want[name] = (unit, Decimal(value).scaleb(-places))
    return time, want


def decode(kind, payload):
    if kind == "json":
        return json.loads(payload, parse_float=Decimal)
    assert 0x80 <= payload[0] <= 0x9F, "the first byte must be an array header"
    return [{LABELS[label]: value for label, value in record.items()} for record in cbor2.loads(payload)]


def main():
    lines = subprocess.run([sys.argv[1]], capture_output=True, text=True, check=True).stdout.splitlines()
    passed = failed = skipped = 0
    at = 0
    while at < len(lines):
        kind, payload = lines[at].split()
        at += 1
        want = {}
        while at < len(lines) and lines[at].startswith("sample "):
            time, sample = expected(lines[at].split()[1:])
            want[time] = sample
            at += 1
        if kind == "cbor" and cbor2 is None:
            skipped += 1
            continue
        found = resolve(decode(kind, bytes.fromhex(payload)))
        if found == want:
            passed += 1
        else:
            failed += 1
            print(f"{kind} {payload}\n  read {found}\n  sent {want}")
    if skipped:
        print("CBOR packs were not checked: Debian's python3-cbor2 is not installed")
    print(f"{passed} passed, {failed} failed, {skipped} skipped")
    return 0 if failed == 0 and passed else 1


if __name__ == "__main__":
    sys.exit(main())
