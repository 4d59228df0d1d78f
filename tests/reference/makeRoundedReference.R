# Makes roundedReference.json: regression of readings that are known only to an interval, by R's survival package.
#
# Run with Debian's R (r-base-core, r-cran-survival) from the top of the repository:
#
#     Rscript tests/reference/makeRoundedReference.R
library(survival)

part <- (0:40) / 40
# Needle in steps of the gauge, with noise of needle and eye; read to whole steps.
set.seed(11, kind = "Mersenne-Twister", normal.kind = "Inversion")
needle <- list(slow = 100.3 - 2.0 * part + rnorm(41, 0, 0.4), quick = 60.1 - 7.5 * part + rnorm(41, 0, 0.6))

fit <- function(values) {
  steps <- round(values)
  model <- survreg(Surv(steps - 0.5, steps + 0.5, type = "interval2") ~ part, dist = "gaussian")
  error <- sqrt(diag(vcov(model)))
  sprintf(
    '    { "steps": [%s],\n      "start_steps": %.9f, "fall_steps": %.9f, "fall_error_steps": %.9f, "noise_steps": %.9f }',
    paste(steps, collapse = ", "), coef(model)[1], -coef(model)[2], error[2], model$scale
  )
}

cat(
  "{\n",
  '  "what": "interval-censored normal regression (survreg, interval2) of 41 readings evenly over the hold",\n',
  sprintf('  "version": "%s, survival %s",\n', R.version.string, packageVersion("survival")),
  '  "command": "Rscript tests/reference/makeRoundedReference.R",\n',
  sprintf('  "date": "%s",\n', Sys.Date()),
  '  "fits": [\n', paste(sapply(needle, fit), collapse = ",\n"), "\n  ]\n}\n",
  file = "tests/reference/roundedReference.json", sep = ""
)
