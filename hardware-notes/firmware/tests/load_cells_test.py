"""The load-cell figures in the notes against OIML R 60-1:2021 (published/sensors.json)."""

import json
import pathlib
import unittest

from tools import load_cells

PUBLISHED = json.loads((pathlib.Path(__file__).parent / "published/sensors.json").read_text(encoding="utf-8"))["oiml_r60"]


class LoadCells(unittest.TestCase):
    def test_the_steps_of_class_c_are_those_of_table_4(self):
        for factor, upper in PUBLISHED["mpe_table4_upper_load_in_v"]["C"].items():
            self.assertEqual(load_cells.permissible_error_intervals(upper), 0.7 * float(factor))
            if float(factor) < 1.5:
                self.assertGreater(load_cells.permissible_error_intervals(upper + 1), 0.7 * float(factor))
        with self.assertRaises(ValueError):
            load_cells.permissible_error_intervals(10001)

    def test_creep_of_a_c3_cell_is_the_published_example(self):
        example = PUBLISHED["creep"]["published_examples_C3"]
        self.assertAlmostEqual(load_cells.creep_intervals(3000, 0.7), example["30_min"], places=12)
        self.assertAlmostEqual(load_cells.creep_intervals(3000, 0.15), example["20_to_30_min"], places=12)

    def test_the_table_in_kilograms(self):
        table = PUBLISHED["derived_for_C3"]
        for i, capacity in enumerate(table["Emax_kg"]):
            interval = load_cells.verification_interval_kg(capacity)
            self.assertAlmostEqual(interval, table["v_kg"][i], places=8)
            self.assertAlmostEqual(load_cells.permissible_error_intervals(3000) * interval, table["mpe_at_Emax_kg"][i])
            self.assertAlmostEqual(load_cells.creep_intervals(3000, 0.7) * interval, table["creep_30_min_kg"][i])
            self.assertAlmostEqual(load_cells.creep_intervals(3000, 0.15) * interval, table["creep_20_to_30_min_kg"][i])
            shift = table["zero_shift_per_5C_kg_with_vmin_Emax_over_10000"][i]
            self.assertAlmostEqual(load_cells.zero_shift_kg(capacity, 5), shift)
            self.assertAlmostEqual(load_cells.zero_shift_kg(capacity, 50), table["zero_shift_over_50C_kg"][i])


if __name__ == "__main__":
    unittest.main()
