/* Prints the measured count loss of the lane decoder as a table (default) or as an
 * SVG curve (`count_loss svg`), beside the dead-time formulas. */
#include "count_loss.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define POINTS 12
#define BEES_A_POINT 4000.0

static const double OFFERED[POINTS] = {0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 5.0};

typedef struct curve {
    const char *name;
    entrance_habits habits;
    count_loss points[POINTS];
    double tau_s;
} curve;

static double clamp(double value) {
    return value < 0 ? 0 : value;
}

/* The dead time that fits the non-paralyzable formula best: least squares of
 * counted / true over all points, by golden-section search. */
static double misfit(const curve *curve, double tau_s) {
    double sum = 0;
    for (int i = 0; i < POINTS; i++) {
        double true_rate = curve->points[i].true_per_s;
        double gap = curve->points[i].counted_per_s - nonparalyzable_observed(true_rate, tau_s);
        sum += gap * gap / (true_rate * true_rate);
    }
    return sum;
}

static double fitted_tau(const curve *curve) {
    const double ratio = 0.6180339887498949;
    double low = 0;
    double high = 2;
    while (high - low > 1e-5) {
        double left = high - ratio * (high - low);
        double right = low + ratio * (high - low);
        if (misfit(curve, left) < misfit(curve, right)) {
            high = right;
        } else {
            low = left;
        }
    }
    return (low + high) / 2;
}

static void measure(curve *curve) {
    for (int i = 0; i < POINTS; i++) {
        curve->points[i] = measure_count_loss(curve->habits, 0, OFFERED[i], BEES_A_POINT, 100 + (uint64_t)i);
    }
    curve->tau_s = fitted_tau(curve);
}

static void print_table(const curve *curve) {
    printf("### %s\n\nFitted dead time: %.0f ms a lane.\n\n", curve->name, curve->tau_s * 1000.0);
    printf("| bees passing /s, one lane | counted /s | counted, share | m = n/(1+n tau) | n exp(-n tau) | corrected "
           "back, error |"
           " wrong way |\n|---:|---:|---:|---:|---:|---:|---:|\n");
    for (int i = 0; i < POINTS; i++) {
        const count_loss *point = &curve->points[i];
        double corrected = nonparalyzable_true(point->counted_per_s, curve->tau_s);
        printf("| %.3f | %.3f | %.1f %% | %.1f %% | %.1f %% | %+.1f %% | %.2f %% |\n", point->true_per_s,
               point->counted_per_s, 100 * point->counted_per_s / point->true_per_s,
               100 / (1 + point->true_per_s * curve->tau_s),
               100 * paralyzable_observed(1, point->true_per_s * curve->tau_s),
               100 * (corrected / point->true_per_s - 1), 100 * point->wrong_way_per_s / point->true_per_s);
    }
    printf("\n");
}

#define LEFT 70.0
#define TOP 40.0
#define WIDE 560.0
#define HIGH 300.0
#define RATE_MAX 5.0

static double across(double rate) {
    return LEFT + WIDE * rate / RATE_MAX;
}
static double down(double share) {
    return TOP + HIGH * (1.0 - share);
}

/* Bees that come to look and turn round in the lane, as scouts do: none of them
 * may count. */
static void print_turning_back(void) {
    static const double shares[] = {0.05, 0.2, 0.5, 0.8};
    printf("### Bees that turn back\n\n| share that turns back | passing /s | counted inward /s | counted, share | "
           "wrong way |\n"
           "|---:|---:|---:|---:|---:|\n");
    for (int i = 0; i < 4; i++) {
        entrance_habits habits = entrance_usual_habits();
        habits.turns_back = shares[i];
        count_loss point = measure_count_loss(habits, 0, 0.2, BEES_A_POINT, 500 + (uint64_t)i);
        printf("| %.0f %% | %.3f | %.3f | %.1f %% | %.2f %% |\n", 100 * shares[i], point.true_per_s,
               point.counted_per_s - point.wrong_way_per_s,
               100 * (point.counted_per_s - point.wrong_way_per_s) / point.true_per_s,
               100 * point.wrong_way_per_s / point.true_per_s);
    }
    printf("\n");
}

static void draw_axes(void) {
    for (int tenth = 0; tenth <= 10; tenth += 2) {
        double y = down(tenth / 10.0);
        printf("<path d=\"M%.0f %.1fh%.0f\" class=\"grid\"/><text x=\"%.0f\" y=\"%.1f\" text-anchor=\"end\">%d "
               "%%</text>\n",
               LEFT, y, WIDE, LEFT - 8, y + 4, tenth * 10);
    }
    for (int rate = 0; rate <= (int)RATE_MAX; rate++) {
        printf("<text x=\"%.0f\" y=\"%.0f\" text-anchor=\"middle\">%d</text>\n", across(rate), TOP + HIGH + 18, rate);
    }
    printf("<text x=\"%.0f\" y=\"%.0f\" text-anchor=\"middle\">bees passing a second in one lane</text>\n",
           LEFT + WIDE / 2, TOP + HIGH + 38);
    printf("<text x=\"%.0f\" y=\"22\">share of passing bees that is counted</text>\n", LEFT);
}

static void draw_formula(double tau_s, double until, const char *class) {
    printf("<path class=\"%s\" d=\"M", class);
    for (int i = 0; i <= 100; i++) {
        double rate = until * i / 100.0;
        printf("%.1f %.1f ", across(rate), down(1.0 / (1.0 + rate * tau_s)));
    }
    printf("\"/>\n");
}

static void draw_points(const curve *curve, const char *class) {
    for (int i = 0; i < POINTS; i++) {
        double rate = curve->points[i].true_per_s;
        if (rate <= RATE_MAX + 0.05) {
            printf("<circle class=\"%s\" cx=\"%.1f\" cy=\"%.1f\" r=\"4\"/>\n", class, across(rate),
                   down(clamp(curve->points[i].counted_per_s / rate)));
        }
    }
}

static void print_svg(const curve *file, const curve *crowd) {
    printf(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 660 450\" role=\"img\" aria-label=\"Count loss "
        "against the "
        "rate of passing bees\" font-family=\"sans-serif\" font-size=\"13\">\n<style>.grid{stroke:#ccc}.a{fill:#1b6e8c}"
        ".b{fill:#b3541e}.fa{fill:none;stroke:#1b6e8c;stroke-width:2}.fb{fill:none;stroke:#b3541e;stroke-width:2}"
        "</style>\n<rect width=\"660\" height=\"450\" fill=\"#fff\"/>\n");
    draw_axes();
    draw_formula(file->tau_s, RATE_MAX, "fa");
    draw_formula(crowd->tau_s, RATE_MAX, "fb");
    draw_points(file, "a");
    draw_points(crowd, "b");
    printf("<circle class=\"a\" cx=\"80\" cy=\"410\" r=\"4\"/><text x=\"92\" y=\"414\">%s; line: n/(1+n tau), tau = "
           "%.0f ms</text>\n",
           file->name, file->tau_s * 1000);
    printf("<circle class=\"b\" cx=\"80\" cy=\"432\" r=\"4\"/><text x=\"92\" y=\"436\">%s; line: tau = %.0f "
           "ms</text>\n</svg>\n",
           crowd->name, crowd->tau_s * 1000);
}

int main(int count, char **words) {
    curve file = {.name = "Lane one bee wide, bees queue", .habits = entrance_usual_habits()};
    curve crowd = {.name = "Lane too wide, bees pass over each other", .habits = entrance_usual_habits()};
    file.habits.turns_back = 0;
    crowd.habits.turns_back = 0;
    crowd.habits.single_file = false;
    measure(&file);
    measure(&crowd);
    if (count > 1 && strcmp(words[1], "svg") == 0) {
        print_svg(&file, &crowd);
    } else {
        print_table(&file);
        print_table(&crowd);
        print_turning_back();
    }
    return 0;
}
