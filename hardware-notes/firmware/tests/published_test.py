"""The dead-time formulas, as compiled for the count-loss curve, against published/dead-time.json: every
row of its grid, the textbook exercise and Ahmed's example; and the sensor codes of the C tests against
published/sensors.json."""

import json
import pathlib
import subprocess
import unittest

HERE = pathlib.Path(__file__).parent
DEAD_TIME = json.loads((HERE / "published/dead-time.json").read_text(encoding="utf-8"))
SENSORS = json.loads((HERE / "published/sensors.json").read_text(encoding="utf-8"))


def answers(pairs):
    text = "".join(f"{tau!r} {rate!r}\n" for tau, rate in pairs)
    program = str(HERE.parent / "build/dead_time_check")
    out = subprocess.run([program], input=text, capture_output=True, text=True, check=True).stdout
    return [tuple(map(float, line.split())) for line in out.splitlines()]


class DeadTime(unittest.TestCase):
    def close(self, actual, expected):
        self.assertLessEqual(abs(actual - expected), 1e-9 * abs(expected))

    def test_every_row_of_the_grid(self):
        grid = DEAD_TIME["grid"]
        self.assertGreater(len(grid), 20)
        for row, found in zip(grid, answers((row["tau_s"], row["true_rate"]) for row in grid), strict=True):
            self.close(found[0], row["observed_nonparalyzable"])
            self.close(found[1], row["true_rate"])
            self.close(found[2], row["observed_paralyzable"])

    def test_the_textbook_exercise(self):
        exercise = next(case for case in DEAD_TIME["published"] if "observed_per_min" in case)
        [(observed, recovered, _)] = answers([(exercise["tau_s"], exercise["true_per_min"] / 60)])
        self.close(observed * 60, exercise["observed_per_min"])
        self.close(recovered * 60, exercise["true_per_min"])

    def test_ahmeds_example_with_its_misprint_put_right(self):
        example = next(case for case in DEAD_TIME["published"] if "efficiency" in case)
        [(observed, _, _)] = answers([(example["recomputed_tau_s"], example["recomputed_true_per_s"])])
        self.close(observed, example["observed_per_s"])


class SensorCodes(unittest.TestCase):
    def test_the_c_tests_hold_the_data_sheets_table(self):
        source = (HERE / "sensor_test.c").read_text(encoding="utf-8")
        for row in SENSORS["ds18b20"]["table1"]:
            hundredths = int(abs(row["c"]) * 100 + 0.5) * (1 if row["c"] >= 0 else -1)
            self.assertIn(f"{{0x{row['hex'].upper()}, {hundredths}}}", source)
        for code in SENSORS["hx711"]["saturation_hex"]:
            self.assertIn(f"dl_converter_counts(0x{code}), DL_MISSING", source)


if __name__ == "__main__":
    unittest.main()
