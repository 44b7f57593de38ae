# Writes reporting-delay-from-r.csv beside this script: diagnoses by quarter corrected for reporting delay, by the
# log-linear Poisson model of quarter and delay fitted to the complete cells of aids_reporting_delay.csv. Its
# predictions of the missing cells are the same estimate as lib/statistics/delay, reached by another road.
# Run from the repository: npm run reference, which hands over the file to write.
aids <- read.csv("tests/reference/data/aids_reporting_delay.csv")
out <- character(0)
# As known at the end, and as it was known three and six quarters earlier.
delays <- sort(unique(aids$delay))
aids$step <- match(aids$delay, delays) - 1
seen <- tapply(aids$step[aids$dud == 0], aids$time[aids$dud == 0], max)
last <- max(aids$time)
for (back in c(0, 6, 12)) {
  now <- last - back
  rows <- aids[aids$time <= now, ]
  known <- rows$step <= seen[as.character(rows$time)] & rows$time + rows$step <= now
  fitted <- glm(y ~ factor(time) + factor(step), family = poisson, data = rows[known, ], epsilon = 1e-14, maxit = 200)
  # A delay that no complete cell shows yet has no parameter; it is left out on both sides.
  open <- rows[!known & rows$step <= max(rows$step[known]), ]
  to.come <- tapply(predict(fitted, open, type = "response"), open$time, sum)
  observed <- tapply(rows$y[known], rows$time[known], sum)
  for (t in names(observed)) {
    more <- if (t %in% names(to.come)) to.come[[t]] else 0
    out <- c(out, sprintf("%d,%s,%d,%.17g", now, t, observed[[t]], observed[[t]] + more))
  }
}
path <- commandArgs(trailingOnly = TRUE)[1]
writeLines(c(sprintf("# made by tests/reference/reporting-delay.R, R %s, 2026-11-25", getRversion()),
             "as_of,time,on_record,corrected", out), path)
