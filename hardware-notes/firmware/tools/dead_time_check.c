/* Reads `tau rate` pairs, answers with both models' observed rates and the rate
 * recovered from the non-paralyzable one: for the check against published values. */
#include "count_loss.h"

#include <stdio.h>

int main(void) {
    double tau_s;
    double rate;
    while (scanf("%lf %lf", &tau_s, &rate) == 2) {
        double observed = nonparalyzable_observed(rate, tau_s);
        printf("%.17g %.17g %.17g\n", observed, nonparalyzable_true(observed, tau_s),
               paralyzable_observed(rate, tau_s));
    }
    return 0;
}
