"""Energy per day: currents x seconds x how often the firmware's schedule did a thing, and the days
that a battery lasts without sun."""

import csv
import sys

RADIOS = {"wifi": "Wi-Fi", "lora": "low-power long range", "cellular": "cellular"}
FITTED = {"counter and scale": {"counter", "scale"}, "scale only": {"scale"}, "counter only": {"counter"}}


def rows(path):
    with open(path, encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def times(item, day):
    return {"second": 86400, "look": int(day["looks"]), "sample": int(day["samples"]), "send": int(day["sends"])}[
        item["per"]
    ]


def milliamp_hours(item, day):
    return float(item["milliamps"]) * float(item["seconds"]) * times(item, day) / 3600


def total(currents, day, fitted, radio):
    wanted = {"all", radio} | fitted
    return sum(milliamp_hours(item, day) for item in currents if item["applies"] in wanted)


def main():
    currents, batteries, days = (rows(path) for path in sys.argv[1:4])
    print("What the schedule does in a day:\n")
    print("| day | bees passing | looks at the lanes | samples | sendings |\n|---|---:|---:|---:|---:|")
    for day in days:
        print(f"| {day['day']} | {day['passings']} | {day['looks']} | {day['samples']} | {day['sends']} |")
    print("\nmAh a day, each consumer (at 3.3 V behind a linear regulator, so the same at the battery):\n")
    print("| consumer | " + " | ".join(day["day"] for day in days) + " |\n|---|" + "---:|" * len(days))
    for item in currents:
        print(f"| {item['what']} | " + " | ".join(f"{milliamp_hours(item, day):.1f}" for day in days) + " |")
    print("\nmAh a day, together:\n")
    print("| fitted, radio | " + " | ".join(day["day"] for day in days) + " |\n|---|" + "---:|" * len(days))
    for name, fitted in FITTED.items():
        for radio, words in RADIOS.items():
            sums = " | ".join(f"{total(currents, day, fitted, radio):.0f}" for day in days)
            print(f"| {name}, {words} | {sums} |")
    print("\nDays without sun, counter and scale, from a full battery, if every day were:\n")
    print("| battery, radio | " + " | ".join(day["day"] for day in days) + " |\n|---|" + "---:|" * len(days))
    for battery in batteries:
        usable = float(battery["milliamp_hours"]) * float(battery["usable"])
        for radio, words in RADIOS.items():
            lasts = " | ".join(f"{usable / total(currents, day, FITTED['counter and scale'], radio):.0f}" for day in days)
            print(f"| {battery['what']} ({usable:.0f} mAh usable), {words} | {lasts} |")


if __name__ == "__main__":
    main()
