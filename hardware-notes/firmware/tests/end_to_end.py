"""Virtual nodes, a real broker, and Duskline behind it.

    python3 tests/end_to_end.py build/virtual_node [path/to/duskline.jar [run|import]]

Starts mosquitto on a free loopback port and lets the firmware live through invented days: a trap that a
swarm moves into while its radio is out of reach for two hours, one whose node restarts in the middle, one
where nobody comes. Checks that a bare subscriber received each sample exactly once and equal to what the
firmware measured, that settings are applied and acknowledged; and, given the jar, that Duskline stored the
same numbers and found the move-ins, and no others. `run` (the standard) lets Duskline listen to the broker;
`import` writes what the bare subscriber heard as a recorded stream and lets Duskline read that.
"""

import base64
import binascii
import contextlib
import csv
import datetime
import io
import json
import os
import pathlib
import pty
import re
import select
import socket
import subprocess
import sys
import tempfile
import time
import tty
import urllib.error
import urllib.parse
import urllib.request
from decimal import Decimal
from http.cookiejar import CookieJar

try:
    import cbor2
except ImportError:
    cbor2 = None

LABELS = {-3: "bt", -2: "bn", 0: "n", 1: "u", 2: "v", 3: "vs", 4: "vb"}
HOURS = 44
# A midnight (UTC) so long ago that the last sample is of the past, and yet no older than late data is.
BEGIN = int(time.time() - HOURS * 3600) // 86400 * 86400
ZONE_HOURS = 2

# Node, trap, local hour since the first midnight at which a swarm comes, what is special. The swarms come hours
# apart: what happens to two traps in the same minute is weather to Duskline.
NODES = [
    ("v01", "Hollow Ash", 37.2, ["--format", "json", "--silent", "33", "2.0"]),
    ("v02", "Upper Weir", 34.5, ["--format", "cbor", "--restart", "30"]),
    ("v03", "Lime Bank", None, ["--format", "cbor", "--silent", "20", "12"]),
]

passed = failed = 0


def check(holds, words):
    global passed, failed
    if holds:
        passed += 1
    else:
        failed += 1
        print(f"not so: {words}")


def free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def wait_for(condition, what, seconds=60):
    ends = time.monotonic() + seconds
    while time.monotonic() < ends:
        if condition():
            return
        time.sleep(0.2)
    raise SystemExit(f"waited {seconds} s in vain for {what}")


@contextlib.contextmanager
def running(command, **how):
    process = subprocess.Popen(command, **how)
    try:
        yield process
    finally:
        process.terminate()
        try:
            process.wait(timeout=20)
        except subprocess.TimeoutExpired:
            process.kill()
            process.wait()


@contextlib.contextmanager
def broker(folder, port):
    config = folder / "mosquitto.conf"
    config.write_text(
        f"listener {port} 127.0.0.1\nallow_anonymous true\nlog_dest stderr\nlog_type all\n"
        "max_queued_messages 0\n"
    )
    # The broker gives up its rights as root, so it could not open a log file of its own here.
    with open(folder / "mosquitto.log", "w", encoding="utf-8") as log:
        with running(["mosquitto", "-c", str(config)], stdout=log, stderr=log):
            wait_for(lambda: listens(port), "the broker")
            yield


def listens(port):
    with socket.socket() as probe:
        return probe.connect_ex(("127.0.0.1", port)) == 0


def subscribed(folder, topic):
    log = folder / "mosquitto.log"
    return log.exists() and f"\t{topic} (QoS" in log.read_text(errors="replace")


def payload(hexadecimal):
    raw = bytes.fromhex(hexadecimal)
    if raw[:1] == b"[":
        return json.loads(raw, parse_float=Decimal)
    return [{LABELS[label]: value for label, value in record.items()} for record in cbor2.loads(raw)]


def samples_of(records):
    base_time, samples = 0, {}
    for record in records:
        base_time = record.get("bt", base_time)
        quantity = (record.get("n", "")).rsplit(":", 1)[-1]
        samples.setdefault(base_time, {})[quantity] = record.get("v", record.get("vs", record.get("vb")))
    return samples


def truth(path):
    with open(path, encoding="utf-8", newline="") as file:
        return {int(row["unix_s"]): row for row in csv.DictReader(file)}


def run_nodes(program, folder, port):
    """All at once, as in the field; each writes down what it measured."""
    processes = []
    for seed, (node, _, swarm, special) in enumerate(NODES, start=1):
        arrival = -1 if swarm is None else swarm
        command = [program, "--port", port, "--node", node, "--begin", BEGIN, "--hours", HOURS, "--zone", ZONE_HOURS]
        command += ["--arrival", arrival, "--seed", seed, "--storage", folder / f"{node}.store"]
        command += ["--truth", folder / f"{node}.csv", *special]
        processes.append(subprocess.Popen([str(word) for word in command]))
    for process in processes:
        check(process.wait(timeout=600) == 0, "a virtual node ended well")


def check_received(folder, node, lines):
    measured = truth(folder / f"{node}.csv")
    received, repeats = {}, 0
    for topic, hexadecimal in lines:
        if topic == f"traps/{node}/readings":
            for moment, sample in samples_of(payload(hexadecimal)).items():
                repeats += moment in received
                received[moment] = sample
    check(len(measured) > 1000, f"{node} measured for two days ({len(measured)} samples)")
    check(repeats == 0, f"{node}: no sample came twice ({repeats} did)")
    check(received.keys() == measured.keys(), f"{node}: every sample arrived ({len(received)} of {len(measured)})")
    wrong = [
        moment
        for moment, sample in received.items()
        if moment in measured
        and (
            sample["in"] != int(measured[moment]["in"])
            or sample["out"] != int(measured[moment]["out"])
            or Decimal(sample["weight"]) != Decimal(measured[moment]["weight_kg"])
            or sample["boot"] != int(measured[moment]["boot"])
        )
    ]
    check(not wrong, f"{node}: counts and weights arrived as measured (differ at {wrong[:3]})")
    print(f"{node}: {len(received)} samples received, equal to what the firmware measured")


def publish(port, topic, text):
    command = ["mosquitto_pub", "-p", str(port), "-q", "1", "-r", "-t", topic, "-m", text]
    subprocess.run(command, check=True)


def acknowledgement(port, node):
    command = ["mosquitto_sub", "-p", str(port), "-t", f"traps/{node}/settings/ack", "-C", "1", "-W", "5", "-F", "%x"]
    answer = subprocess.run(command, capture_output=True, text=True, check=False).stdout.strip()
    return samples_of(payload(answer))[0] if answer else {}


def settings_text(revision, period, tare):
    return json.dumps(
        [
            {"n": "rev", "u": "count", "v": revision},
            {"n": "period", "u": "s", "v": period},
            {"n": "quick-period", "u": "s", "v": 20},
            {"n": "quick", "vs": "auto"},
            {"n": "tare", "u": "count", "v": tare},
            {"n": "time", "u": "s", "v": 1777888800},
        ]
    )


def check_settings(program, folder, port):
    node = "v09"
    topic = f"traps/{node}/settings"
    publish(port, topic, settings_text(1, 60, 0))
    command = [program, "--port", port, "--node", node, "--no-clock", "--hours", 4, "--seed", 9, "--speed", 300]
    command += ["--storage", folder / f"{node}.store", "--begin", BEGIN, "--linger", 12]
    with running([str(word) for word in command], stdout=subprocess.DEVNULL):
        wait_for(lambda: acknowledgement(port, node).get("rev") == 1, "the stored settings to be acknowledged")
        first = acknowledgement(port, node)
        check(first["period"] == 60 and first["tare"] == 0, "stored settings are in force, the tare number is a baseline")
        check("clock" not in first, "a time from the broker's store is not believed")
        publish(port, topic, settings_text(2, 90, 1))
        wait_for(lambda: acknowledgement(port, node).get("rev") == 2, "the live settings to be acknowledged")
        second = acknowledgement(port, node)
        check(1777888800 <= second.get("clock", 0) < 1777888800 + 7200, "a fresh time sets the clock")
        wait_for(lambda: acknowledgement(port, node).get("tare") == 1, "the tare to be acknowledged")
        check(acknowledgement(port, node)["zero"] != first["zero"], "the tare moved the zero")
        publish(port, topic, settings_text(3, 4, 1))
        wait_for(lambda: "refused" in acknowledgement(port, node), "the refusal")
        third = acknowledgement(port, node)
        check(third["refused"] == "period", "a period of 4 s is refused by name")
        check(third["rev"] == 2 and third["period"] == 90, "what was in force before stays in force")
    print("settings: applied, acknowledged, refused and tared over the broker")


def stuffed(kind, number, payload):
    """A frame by frame.h, packed here anew: consistent overhead byte stuffing, CRC-16 from Python's binascii."""
    body = bytes([kind, number]) + payload
    body += binascii.crc_hqx(body, 0xFFFF).to_bytes(2, "little")
    frame = b""
    for part in body.split(b"\0"):
        while len(part) >= 254:
            frame += b"\xff" + part[:254]
            part = part[254:]
        frame += bytes([len(part) + 1]) + part
    return frame + b"\0"


def unstuffed(frame):
    body = b""
    while frame:
        code = frame[0]
        body += frame[1:code]
        frame = frame[code:]
        if frame and code < 255:
            body += b"\0"
    assert binascii.crc_hqx(body[:-2], 0xFFFF) == int.from_bytes(body[-2:], "little")
    return body[0], body[1], body[2:-2]


def read_frames(line, wanted):
    frames, held = [], b""
    ends = time.monotonic() + 20
    while len(frames) < wanted and time.monotonic() < ends:
        if select.select([line], [], [], 0.5)[0]:
            held += os.read(line, 4096)
        while b"\0" in held:
            frame, held = held.split(b"\0", 1)
            frames.append(unstuffed(frame))
    return frames


def check_gateway(program, folder, port):
    """A board's serial line, played by a pseudo-terminal."""
    publish(port, "traps/v08/settings", settings_text(5, 120, 0))
    ours, theirs = pty.openpty()
    tty.setraw(theirs)
    packet = cbor2.dumps([{-2: "urn:dev:mac:02a1c0fffe000008:", -3: BEGIN, 0: "in", 1: "count", 2: 7}])
    command = [str(program), os.ttyname(theirs), "127.0.0.1", str(port), "v08"]
    with running(command):
        wait_for(lambda: subscribed(folder, "traps/v08/settings"), "the gateway")
        time.sleep(1)
        os.write(ours, b"\x05noise\0" + stuffed(1, 42, packet))
        frames = read_frames(ours, 3)
        os.write(ours, stuffed(1, 43, packet))
        lost = read_frames(ours, 3)
        os.write(ours, stuffed(2, 0, b'[{"n":"rev","u":"count","v":5}]') + stuffed(1, 44, packet))
        acknowledged = read_frames(ours, 3)
    again = [frame[:2] for frame in lost]
    check(again == [(3, 43), (6, 0), (5, 0)], f"settings that the node has not acknowledged go again: {lost}")
    after = [frame[:2] for frame in acknowledged]
    check(after == [(6, 0), (3, 44), (6, 0)], f"settings that it has acknowledged do not: {acknowledged}")
    check([frame[:2] for frame in frames] == [(3, 42), (6, 0), (5, 0)], f"the gateway answers: {frames}")
    if len(frames) == 3:
        check(abs(int.from_bytes(frames[1][2], "little") - time.time()) < 60, "the gateway gives the time")
        check(json.loads(frames[2][2])[0]["v"] == 5, "the gateway hands on the settings")
    lines = (folder / "received.txt").read_text()
    check(f"traps/v08/readings\t{packet.hex()}" in lines.lower(), "the gateway published the pack byte for byte")
    print("gateway: pack published, taken, time and settings handed back")


class Keeper:
    """Somebody at Duskline's pages: signs in, fills in forms, reads the API."""

    NAME, PASSWORD = "Ida", "under the old alder"

    def __init__(self, address):
        self.address = address
        self.browser = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(CookieJar()))
        self.fill("/sign-in", "/sign-in", name=self.NAME, password=self.PASSWORD, to="/")

    def get(self, path):
        with self.browser.open(self.address + path, timeout=30) as answer:
            return answer.read().decode()

    def fill(self, page, action, **fields):
        fields["token"] = re.search(r'name="token" value="([^"]*)"', self.get(page)).group(1)
        body = urllib.parse.urlencode({name.replace("_", "-"): value for name, value in fields.items()}).encode()
        with self.browser.open(self.address + action, body, timeout=30) as answer:
            return answer.status

    def node(self, name):
        try:
            return json.loads(self.get(f"/api/nodes/{name}"))
        except urllib.error.HTTPError as nobody:
            if nobody.code != 404:
                raise
            return {"told": []}


def check_settings_from_the_page(program, folder, port):
    """The firmware's own answer to what a keeper asks for on its page."""
    words = re.search(r"The pages are at (http://[^ ]*[0-9])", (folder / "duskline.log").read_text())
    keeper = Keeper(words.group(1))
    name = "v10"
    command = [program, "--port", port, "--node", name, "--no-clock", "--hours", 6, "--seed", 10, "--speed", 300]
    command += ["--storage", folder / f"{name}.store", "--begin", BEGIN, "--linger", 12]

    def in_force(revision):
        told = keeper.node(name)["told"]
        return told and told[0]["revision"] == revision and told[0]["state"] == "in-force"

    with running([str(word) for word in command], stdout=subprocess.DEVNULL):
        wait_for(lambda: in_force(1), "the firmware to acknowledge the number that tares begin with")
        first = acknowledgement(port, name)
        check(first.get("tare") == 0, f"the first tare number is 0 and tares nothing: {first}")
        keeper.fill(f"/node/{name}", f"/node/{name}/settings", period=90, quick_period=20, quick="auto")
        wait_for(lambda: in_force(2), "the firmware to acknowledge the settings of its page")
        second = acknowledgement(port, name)
        check(second["period"] == 90 and second["quick-period"] == 20, f"the page's settings are in force: {second}")
        check("clock" in second, "a node without a clock was told the time")
        keeper.fill(f"/node/{name}", f"/node/{name}/tare", quiet="yes")
        wait_for(lambda: acknowledgement(port, name).get("tare") == 1, "the tare of the page to be carried out")
        check(acknowledgement(port, name)["zero"] != first["zero"], "the tare of the page moved the zero")
        check(keeper.node(name)["lanes"] == second["lanes"], "Duskline knows how many lanes the node has")
    print("settings: asked for on the node's page, acknowledged by the firmware")


def line_of_traps(folder):
    features = [
        {
            "type": "Feature",
            "geometry": {"type": "Point", "coordinates": [14.0 + number / 100, 47.0]},
            "properties": {"trap": trap, "node": node, "zone": "Europe/Vienna", "fitted": "both"},
        }
        for number, (node, trap, _, _) in enumerate(NODES)
    ]
    path = folder / "line.geojson"
    path.write_text(json.dumps({"type": "FeatureCollection", "features": features}))
    return path


@contextlib.contextmanager
def duskline(jar, folder, port):
    database = folder / "duskline.db"
    config = folder / "duskline.yaml"
    config.write_text(
        f"database: {database}\nline: {line_of_traps(folder)}\nmqtt:\n  url: mqtt://127.0.0.1:{port}\n"
        "pages:\n  host: 127.0.0.1\n  port: 0\n"
    )
    owner = ["java", "-jar", jar, "owner", Keeper.NAME, "--database", str(database)]
    subprocess.run(owner, input=Keeper.PASSWORD + "\n", text=True, check=True, capture_output=True)
    with open(folder / "duskline.log", "w", encoding="utf-8") as log:
        with running(["java", "-jar", jar, "run", "--config", str(config)], stdout=log, stderr=log) as process:

            def ready():
                if process.poll() is not None:
                    raise SystemExit("Duskline ended:\n" + (folder / "duskline.log").read_text())
                return subscribed(folder, "traps/+/readings")

            wait_for(ready, "Duskline to subscribe", 240)
            yield database


def imported(jar, folder, heard):
    """The recorded stream of the wire contract, from what the bare subscriber heard."""
    stream = folder / "stream.jsonl"
    with open(stream, "w", encoding="utf-8") as file:
        for topic, hexadecimal, received in heard:
            raw = bytes.fromhex(hexadecimal)
            line = f'{{"received":{float(received):.3f},"topic":"{topic}",'
            if raw[:1] == b"[":
                line += f'"payload":{raw.decode()}}}'
            elif topic.endswith("/status"):
                line += f'"text":{json.dumps(raw.decode())}}}'
            else:
                line += f'"base64":"{base64.b64encode(raw).decode()}"}}'
            file.write(line + "\n")
    database = folder / "duskline.db"
    ask(jar, "import", stream, "--line", line_of_traps(folder), "--database", database)
    return database


def ask(jar, *words):
    command = ["java", "-jar", jar, *map(str, words)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    check(done.returncode == 0, f"{' '.join(map(str, words))} ended well: {done.stderr[-500:]}")
    return done.stdout


def moment_of(words):
    try:
        return round(float(words))
    except ValueError:
        return round(datetime.datetime.fromisoformat(words.replace("Z", "+00:00")).timestamp())


def exported(jar, database, trap):
    """Rows by time, with the columns that begin with in, out and weight."""
    text = ask(jar, "export", "--database", database, "--trap", trap)
    rows = list(csv.DictReader(io.StringIO(text)))
    if not rows:
        return {}
    names = [name for name in rows[0] if name]
    when = next(name for name in names if re.split(r"[ _(]", name)[0] == "time")

    def column(quantity):
        return next(name for name in names if name == quantity or name.startswith((quantity + "_", quantity + " ")))

    return {moment_of(row[when]): (row[column("in")], row[column("out")], row[column("weight")]) for row in rows}


def check_duskline(jar, database, folder):
    for node, trap, swarm, _ in NODES:
        measured = truth(folder / f"{node}.csv")
        ends = time.monotonic() + 90
        stored = exported(jar, database, trap)
        while len(stored) < len(measured) and time.monotonic() < ends:
            time.sleep(2)
            stored = exported(jar, database, trap)
        check(stored.keys() == measured.keys(), f"{trap}: Duskline holds {len(stored)} of {len(measured)} samples")
        wrong = [
            moment
            for moment, (ins, outs, weight) in stored.items()
            if moment in measured
            and (
                float(ins) != float(measured[moment]["in"])
                or float(outs) != float(measured[moment]["out"])
                or abs(float(weight) - float(measured[moment]["weight_kg"])) > 1e-9
            )
        ]
        check(not wrong, f"{trap}: stored counts and weights equal the firmware's (differ at {wrong[:3]})")
    findings = [json.loads(line) for line in ask(jar, "findings", "--database", database).splitlines() if line.strip()]
    for _, trap, swarm, _ in NODES:
        onsets = [
            datetime.datetime.fromisoformat(finding["onset"].replace("Z", "+00:00"))
            for finding in findings
            if finding["kind"] == "move-in" and finding["trap"] == trap
        ]
        check(len(onsets) == (1 if swarm else 0), f"{trap}: {1 if swarm else 0} move-ins, found {onsets}")
        if swarm and onsets:
            off = abs(onsets[0].timestamp() - (BEGIN + (swarm - ZONE_HOURS) * 3600)) / 60
            check(off <= 20, f"{trap}: the onset is {off:.0f} minutes from the arrival")
            print(f"{trap}: move-in found, onset {off:.1f} minutes from the true arrival")


def main():
    if cbor2 is None:
        print("not run: Debian's python3-cbor2 is not installed (apt-get install python3-cbor2)")
        print("0 passed, 0 failed, 1 skipped")
        return 1
    program = pathlib.Path(sys.argv[1]).resolve()
    jar = sys.argv[2] if len(sys.argv) > 2 else None
    how = sys.argv[3] if len(sys.argv) > 3 else "run"
    with tempfile.TemporaryDirectory() as name, contextlib.ExitStack() as open_things:
        folder = pathlib.Path(name)
        port = free_port()
        open_things.enter_context(broker(folder, port))
        received = open_things.enter_context(open(folder / "received.txt", "w+", encoding="utf-8"))
        listener = ["mosquitto_sub", "-p", str(port), "-q", "1", "-t", "traps/#", "-F", "%t\t%x\t%U"]
        open_things.enter_context(running(listener, stdout=received))
        wait_for(lambda: subscribed(folder, "traps/#"), "the bare subscriber")
        # By hand and before Duskline listens: it would have settings of its own for these nodes.
        check_settings(program, folder, port)
        check_gateway(program.parent / "gateway", folder, port)
        database = open_things.enter_context(duskline(jar, folder, port)) if jar and how == "run" else None
        run_nodes(program, folder, port)
        time.sleep(1)
        heard = [line.split("\t") for line in (folder / "received.txt").read_text().splitlines()]
        lines = [(topic, hexadecimal) for topic, hexadecimal, _ in heard]
        for node, _, _, _ in NODES:
            check_received(folder, node, lines)
        if jar and how == "import":
            database = imported(jar, folder, heard)
        if jar:
            check_duskline(jar, database, folder)
        if jar and how == "run":
            check_settings_from_the_page(program, folder, port)
        if not jar:
            print("without a jar: what Duskline stores and finds was not checked")
    print(f"{passed} passed, {failed} failed")
    return 0 if failed == 0 else 1


if __name__ == "__main__":
    sys.exit(main())
