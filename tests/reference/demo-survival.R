# Writes demo-from-r.csv.gz: curves and life distributions of every component of the demo company, from the days in
# data/demo_lives.csv.gz, as a check on lib/statistics and lib/failures. Run by npm run reference, which hands over the file to write.
# survreg knows no left truncation, and no Debian package that does is needed here: for late entry the log-likelihood is
# written out, differentiated by deriv3 and climbed by Newton steps until the squared distance to the top,
# in standard errors, is below 1e-18. Lives watched from the start go to survreg itself.
suppressMessages(library(survival))
data <- function(name) file.path("tests/reference/data", name)
units <- read.csv(gzfile(data("demo_lives.csv.gz")), comment.char = "#", colClasses = c(type = "character", failures = "character"))
types <- read.csv(data("demo_component_types.csv"), comment.char = "#")
cut_off <- 20758 # 2026-11-01, the day after the last
units$unit <- seq_len(nrow(units))
units$end <- pmin(units$retired, cut_off, na.rm = TRUE)
parts <- strsplit(units$failures, " ", fixed = TRUE)
failed <- data.frame(unit = rep(units$unit, lengths(parts)), text = unlist(parts))
failed$component <- sub("@.*", "", failed$text); failed$day <- as.numeric(sub(".*@", "", failed$text))
failed <- merge(failed, units[c("unit", "type", "observed_from", "retired")])
failed <- subset(failed, day >= observed_from & day < cut_off & (is.na(retired) | day <= retired))
rows <- list()
put <- function(case, quantity, age, value) rows[[length(rows) + 1]] <<-
  data.frame(case = case, quantity = quantity, age = sprintf("%.17g", age), value = sprintf("%.17g", value))

# A component begins with its unit; what replaces a failed one begins again at age 0. A life that was running when watching
# began enters half a day before the first watched day.
lives_of <- function(component_key) {
  u <- units[units$type %in% types$type[types$component == component_key], ]
  f <- failed[failed$component == component_key & failed$unit %in% u$unit, ]
  d <- rbind(data.frame(unit = u$unit, start = u$in_service, first = TRUE), data.frame(unit = f$unit, start = f$day, first = FALSE))
  d <- d[order(d$unit, !d$first, d$start), ]
  d <- merge(d, u[c("unit", "observed_from", "in_service", "end")], sort = FALSE)
  d <- d[order(d$unit, !d$first, d$start), ]
  n <- nrow(d); same <- c(d$unit[-1] == d$unit[-n], FALSE)
  d$stop <- ifelse(same, c(d$start[-1], NA), d$end); d$event <- as.numeric(same)
  d$entry <- ifelse(d$observed_from > d$start, d$observed_from - d$start - 0.5, 0); d$exit <- d$stop - d$start
  d <- d[d$stop >= d$observed_from & (d$exit > 0 | d$event == 1), ]
  d$from_start <- d$observed_from == d$in_service
  d
}

# At most twelve steps of each curve, the first and the last among them: a mistake at one step stays in all later ones.
curve <- function(case, d) {
  put(case, c("lives", "failures"), 0, c(nrow(d), sum(d$event)))
  if (sum(d$event) == 0) return(invisible())
  # Age 0 is at risk for a life that enters at 0; R wants every life to enter before it leaves.
  fit <- summary(survfit(Surv(ifelse(entry == 0, -1, entry), exit, event) ~ 1, d, conf.type = "log-log"), censored = FALSE)
  at <- unique(round(seq(1, length(fit$time), length.out = min(12, length(fit$time)))))
  for (q in c("n.risk", "surv", "std.err", "lower", "upper", "cumhaz", "std.chaz")) put(case, q, fit$time[at], fit[[q]][at])
}

tight <- survreg.control(rel.tolerance = 1e-13, maxiter = 500)
by_survreg <- function(case, d) for (dist in c("weibull", "lognormal", "exponential")) {
  y <- Surv(ifelse(d$event == 1 & d$exit == 0, NA, d$exit), ifelse(d$event == 0, NA, pmax(d$exit, 0.5)), type = "interval2")
  fit <- survreg(y ~ 1, dist = dist, control = tight); v <- as.matrix(vcov(fit))
  put(paste(case, dist), c("location", "spread", "log_likelihood"), 0, c(coef(fit), fit$scale, fit$loglik[2]))
  put(paste(case, dist), "location_variance", 0, v[1, 1])
  if (dist != "exponential") put(paste(case, dist), c("covariance", "log_spread_variance"), 0, v[1:2, 2])
}

z <- quote((log(t) - m) * exp(-s))
terms <- list(
  weibull = list(density = bquote(.(z) - exp(.(z)) - s - log(t)), sound = bquote(-exp(.(z))), failed = bquote(log(1 - exp(-exp(.(z)))))),
  lognormal = list(density = bquote(log(dnorm(.(z))) - s - log(t)), sound = bquote(log(pnorm(-(.(z))))), failed = bquote(log(pnorm(.(z))))))
by_newton <- function(case, d) for (dist in c("weibull", "lognormal", "exponential")) {
  with_slopes <- lapply(terms[[if (dist == "lognormal") dist else "weibull"]], deriv3, c("m", "s"), c("m", "s", "t"))
  total <- function(value, sign) list(f = sign * sum(value), g = sign * colSums(attr(value, "gradient")),
    h = sign * apply(attr(value, "hessian"), c(2, 3), sum))
  at <- function(m, s) {
    each <- function(term, t, sign) if (length(t) == 0) list(f = 0, g = c(0, 0), h = matrix(0, 2, 2)) else total(with_slopes[[term]](m, s, t), sign)
    all <- list(each("density", d$exit[d$event == 1 & d$exit > 0], 1), each("failed", rep(0.5, sum(d$event == 1 & d$exit == 0)), 1),
      each("sound", d$exit[d$event == 0], 1), each("sound", d$entry[d$entry > 0], -1))
    list(f = sum(sapply(all, `[[`, "f")), g = Reduce(`+`, lapply(all, `[[`, "g")), h = Reduce(`+`, lapply(all, `[[`, "h")))
  }
  free <- if (dist == "exponential") 1 else 1:2
  p <- c(log(sum(d$exit - d$entry) / sum(d$event)), 0)
  if (dist != "exponential") p <- optim(p, function(q) { f <- at(q[1], q[2])$f; if (is.finite(f)) -f else 1e10 }, control = list(reltol = 1e-13, maxit = 3000))$par
  for (i in 1:30) { now <- at(p[1], p[2]); step <- solve(-now$h[free, free], now$g[free]); p[free] <- p[free] + step; if (sum(step * now$g[free]) < 1e-18) break }
  now <- at(p[1], p[2]); v <- solve(-now$h[free, free, drop = FALSE])
  put(paste(case, dist), c("location", "spread", "log_likelihood"), 0, c(p[1], exp(p[2]), now$f))
  put(paste(case, dist), "location_variance", 0, v[1, 1])
  if (dist != "exponential") put(paste(case, dist), c("covariance", "log_spread_variance"), 0, v[1:2, 2])
}

for (key in sort(unique(failed$component))) {
  all <- lives_of(key); new <- all[all$from_start, ]
  curve(paste(key, "all"), all); curve(paste(key, "new"), new)
  if (sum(all$event) >= 5) by_newton(paste(key, "all"), all)
  if (sum(new$event) >= 5) by_survreg(paste(key, "new"), new)
}
open_data <- function(case, entry, exit, event) by_newton(case, data.frame(entry, exit, event))
rossi <- read.csv(data("rossi_left_truncated.csv")); open_data("rossi late entry", rossi$start, rossi$week, rossi$arrest)
macs <- read.csv(data("macs_left_truncated.csv")); open_data("macs", macs$W, macs$T, macs$D)

out <- gzfile(commandArgs(TRUE)[1], "w")
writeLines(sprintf("# %s; survival %s; written by tests/reference/demo-survival.R", R.version.string, packageVersion("survival")), out)
write.csv(do.call(rbind, rows), out, row.names = FALSE, quote = FALSE)
close(out)
