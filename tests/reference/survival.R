# Writes survival-from-r.csv: survival curves, life distributions and recurrence computed by R, as a check on
# lib/statistics/survival, life and recurrence. Run from the repository: npm run reference, which hands over the file to write.
suppressMessages(library(survival))
read <- function(name) read.csv(file.path("tests/reference/data", paste0(name, ".csv")))
rows <- list()
put <- function(case, quantity, age, value) {
  rows[[length(rows) + 1]] <<- data.frame(case = case, quantity = quantity,
    age = sprintf("%.17g", age), value = sprintf("%.17g", value))
}

# Survival curves -------------------------------------------------------------------------------
curve <- function(case, fit_with) {
  for (type in c("plain", "log", "log-log")) {
    fit <- summary(fit_with(type), censored = FALSE)
    put(case, paste0("lower_", type), fit$time, fit$lower)
    put(case, paste0("upper_", type), fit$time, fit$upper)
  }
  put(case, "survival", fit$time, fit$surv)
  put(case, "standard_error", fit$time, fit$std.err)
  put(case, "at_risk", fit$time, fit$n.risk)
  put(case, "cumulative_hazard", fit$time, fit$cumhaz)
  put(case, "cumulative_hazard_error", fit$time, fit$std.chaz)
  for (p in c(0.1, 0.25, 0.5)) {
    q <- quantile(fit_with("log-log"), p)
    put(case, c("quantile", "quantile_lower", "quantile_upper"), p, c(q$quantile, q$lower, q$upper))
  }
}
leukemia <- read("leukemia_remission"); six_mp <- subset(leukemia, arm == "6-MP")
macs <- read("macs_left_truncated"); rossi <- read("rossi_left_truncated"); fans <- read("genfan")
curve("leukemia 6-MP", function(type) survfit(Surv(weeks, status) ~ 1, six_mp, conf.type = type))
curve("macs", function(type) survfit(Surv(W, T, D) ~ 1, macs, conf.type = type))
curve("rossi late entry", function(type) survfit(Surv(start, week, arrest) ~ 1, rossi, conf.type = type))
curve("genfan", function(type) survfit(Surv(hours, status) ~ 1, fans, conf.type = type))

# Comparison of two curves ----------------------------------------------------------------------
compare <- function(case, test) {
  put(case, c("observed", "expected"), 1, c(test$obs[1], test$exp[1]))
  put(case, c("variance", "chi_square"), 1, c(test$var[1, 1], test$chisq))
}
compare("log-rank leukemia", survdiff(Surv(weeks, status) ~ arm, leukemia))
compare("peto leukemia", survdiff(Surv(weeks, status) ~ arm, leukemia, rho = 1))
compare("log-rank rossi fin", survdiff(Surv(week, arrest) ~ fin, rossi))

# Life distributions ----------------------------------------------------------------------------
tight <- survreg.control(rel.tolerance = 1e-15, maxiter = 500)
life <- function(case, surv, weights) {
  for (dist in c("weibull", "lognormal", "exponential")) {
    fit <- survreg(surv ~ 1, weights = weights, dist = dist, control = tight)
    put(paste(case, dist), c("location", "spread", "log_likelihood"), 0, c(coef(fit), fit$scale, fit$loglik[2]))
    put(paste(case, dist), "location_variance", 0, vcov(fit)[1, 1])
    if (dist != "exponential") put(paste(case, dist), c("covariance", "log_spread_variance"), 0, vcov(fit)[1:2, 2])
  }
}
bounded <- function(d) Surv(ifelse(d$lower == 0, NA, d$lower), ifelse(is.finite(d$upper), d$upper, NA), type = "interval2")
nist <- read("nist_8_4_1_weibull"); cage <- read("bearing_cage"); balls <- read("ball_bearing_lz")
life("nist", Surv(nist$hours, nist$status), nist$count)
life("bearing cage", Surv(cage$hours, cage$status), cage$count)
life("genfan", Surv(fans$hours, fans$status), rep(1, nrow(fans)))
life("ball bearings", Surv(balls$megacycles, rep(1, 23)), rep(1, 23))
heat <- read("heat_exchanger"); life("heat exchanger", bounded(heat), heat$count)
wheel <- read("turbine_wheel")
life("turbine wheel", Surv(ifelse(wheel$cracked == 1, NA, wheel$hundred_hours),
  ifelse(wheel$cracked == 1, wheel$hundred_hours, NA), type = "interval2"), wheel$count)
alpha <- read("alpha_particle_grouped"); alpha <- alpha[alpha$count > 0, ]
for (n in c(20, 200, 2000, 10220)) { a <- alpha[alpha$sample == n, ]; life(paste("alpha", n), bounded(a), a$count) }

regression <- survreg(Surv(week, arrest) ~ fin + age + race + wexp + mar + paro + prio, rossi, control = tight)
put("rossi regression", "coefficient", 0:7, coef(regression))
put("rossi regression", "standard_error", 0:8, sqrt(diag(vcov(regression))))
put("rossi regression", c("spread", "log_likelihood"), 0, c(regression$scale, regression$loglik[2]))

# Anderson-Darling against the maximum-likelihood Weibull, written out.
best <- survreg(Surv(megacycles, rep(1, 23)) ~ 1, balls, control = tight)
u <- pweibull(sort(balls$megacycles), 1 / best$scale, exp(coef(best)))
a2 <- -23 - mean((2 * (1:23) - 1) * (log(u) + log(1 - rev(u))))
put("ball bearings", c("anderson_darling", "anderson_darling_adjusted"), 0, a2 * c(1, 1 + 0.2 / sqrt(23)))

# Late entry: the likelihood written out and maximised directly ----------------------------------
log_likelihood <- function(dist, entry, exit, event) function(p) {
  z <- function(t) (log(t) - p[1]) / exp(p[2])
  log_sound <- if (dist == "weibull") function(t) ifelse(t > 0, -exp(z(t)), 0)
    else function(t) ifelse(t > 0, pnorm(z(t), lower.tail = FALSE, log.p = TRUE), 0)
  log_density <- if (dist == "weibull") z(exit) - exp(z(exit)) - p[2] - log(exit)
    else dnorm(z(exit), log = TRUE) - p[2] - log(exit)
  sum(ifelse(event == 1, log_density, log_sound(exit)) - log_sound(entry))
}
gradient <- function(f, p, h = 1e-5) sapply(1:2, function(i) { e <- replace(c(0, 0), i, h)
  (8 * (f(p + e) - f(p - e)) - (f(p + 2 * e) - f(p - 2 * e))) / (12 * h) })
hessian <- function(f, p, h = 1e-4) sapply(1:2, function(i) { e <- replace(c(0, 0), i, h)
  (gradient(f, p + e) - gradient(f, p - e)) / (2 * h) })
late <- function(case, d) for (dist in c("weibull", "lognormal")) {
  f <- log_likelihood(dist, d$entry, d$exit, d$event)
  p <- optim(c(log(mean(d$exit)), 0), f, control = list(fnscale = -1, reltol = 1e-12, maxit = 5000))$par
  for (i in 1:8) p <- p - solve(hessian(f, p), gradient(f, p))
  put(paste(case, dist), c("location", "spread", "log_likelihood"), 0, c(p[1], exp(p[2]), f(p)))
}
late("rossi late entry", data.frame(entry = rossi$start, exit = rossi$week, event = rossi$arrest))
late("macs", data.frame(entry = macs$W, exit = macs$T, event = macs$D))

# Profile limits of the Weibull, found by brute force ---------------------------------------------
profile_limits <- function(case, hours, status, count) {
  value <- function(location, s) { z <- (log(hours) - location) / exp(s)
    sum(count * (status * (z - s - log(hours)) - exp(z))) }
  best <- survreg(Surv(hours, status) ~ 1, weights = count, control = tight)
  m <- unname(coef(best)); s <- log(best$scale); top <- value(m, s); drop <- qchisq(0.95, 1) / 2
  ends <- function(quantity, at, profile, back, reach) {
    f <- function(theta) top - profile(theta) - drop
    low <- uniroot(f, c(at - reach, at), tol = 1e-13)$root; high <- uniroot(f, c(at, at + reach), tol = 1e-13)$root
    put(case, paste0(quantity, c("_low", "_high")), 0, back(c(low, high)))
  }
  over <- function(f, centre) optimize(f, centre + c(-4, 4), maximum = TRUE, tol = 1e-12)$objective
  ends("spread", s, function(theta) over(function(l) value(l, theta), m), exp, 2)
  ends("scale", m, function(theta) over(function(x) value(theta, x), s), exp, 5)
  z <- log(-log(0.9))
  ends("b10", m + z * exp(s), function(theta) over(function(x) value(theta - z * exp(x), x), s), exp, 4)
  y <- log(2000); at <- (y - m) / exp(s)
  ends("failed_by_2000", at, function(theta) over(function(x) value(y - theta * exp(x), x), s),
    function(theta) 1 - exp(-exp(theta)), 3)
}
profile_limits("profile bearing cage", cage$hours, cage$status, cage$count)
profile_limits("profile genfan", fans$hours, fans$status, rep(1, 70))

# Mean cumulative function ----------------------------------------------------------------------
# One engine has two replacements on one day: the first is set one ten-thousandth of a day earlier, with nobody leaving
# between. An end of watching on the day of a replacement adds nothing and is left out.
recurrence <- function(case, id, time, status) {
  d <- data.frame(id, time, status)[order(id, time, -status), ]
  d <- d[!(d$status == 0 & duplicated(d[, c("id", "time")])), ]
  for (i in nrow(d):2) if (d$id[i] == d$id[i - 1] && d$time[i] <= d$time[i - 1]) d$time[i - 1] <- d$time[i] - 1e-4
  d$start <- ave(d$time, d$id, FUN = function(t) c(0, head(t, -1)))
  fit <- survfit(Surv(start, time, status) ~ 1, d, id = id)
  keep <- fit$n.event > 0
  put(case, "mean", fit$time[keep], fit$cumhaz[keep])
  put(case, "error", fit$time[keep], fit$std.chaz[keep])
}
seats <- read("valve_seat"); recurrence("valve seats", seats$id, seats$time, seats$status)
grids <- read("braking_grids")
for (b in 1:2) { g <- grids[grids$batch == b, ]
  recurrence(paste("braking grids", b), g$unit, g$days, as.numeric(g$event == "Replacement")) }

out <- file(commandArgs(TRUE)[1], "w")
writeLines(sprintf("# %s; survival %s; written by tests/reference/survival.R", R.version.string,
  packageVersion("survival")), out)
write.csv(do.call(rbind, rows), out, row.names = FALSE, quote = c(1, 2))
close(out)
