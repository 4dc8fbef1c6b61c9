"""What a load cell's class promises, in grams, for the capacities that suit a trap.

Formulas of OIML R 60-1:2021: maximum permissible error (5.3.2, table 4), creep (5.5.1), temperature
effect on the output at minimum dead load (5.6.1)."""

CLASS_C_STEPS = ((500, 0.5), (2000, 1.0), (10000, 1.5))
APPORTIONMENT = 0.7


def verification_interval_kg(capacity_kg, intervals=3000):
    return capacity_kg / intervals


def permissible_error_intervals(load_intervals, steps=CLASS_C_STEPS, apportionment=APPORTIONMENT):
    """Permissible error in intervals v at a load in intervals; each upper bound counts in."""
    for upper, factor in steps:
        if upper is None or load_intervals <= upper:
            return apportionment * factor
    raise ValueError(f"{load_intervals} intervals are beyond the class")


def creep_intervals(load_intervals, share):
    """5.5.1: at 90 to 100 % of capacity, 0.7 of the error within 30 minutes, 0.15 of it from 20 to 30."""
    return share * permissible_error_intervals(load_intervals)


def zero_shift_kg(capacity_kg, degrees, least_interval_parts=10000):
    """5.6.1, class C: apportionment times v_min for each 5 degrees."""
    return APPORTIONMENT * capacity_kg / least_interval_parts * degrees / 5


def main():
    print("| capacity, kg | error at full load, g | creep in 30 min, g | creep from 20 to 30 min, g | zero shift a 5 °C, g | over 20 °C, g |")
    print("|---:|---:|---:|---:|---:|---:|")
    for capacity in (10, 50, 100, 200):
        interval = verification_interval_kg(capacity)
        figures = (
            permissible_error_intervals(3000) * interval,
            creep_intervals(3000, 0.7) * interval,
            creep_intervals(3000, 0.15) * interval,
            zero_shift_kg(capacity, 5),
            zero_shift_kg(capacity, 20),
        )
        print(f"| {capacity} | " + " | ".join(f"{figure * 1000:.2f}" for figure in figures) + " |")


if __name__ == "__main__":
    main()
