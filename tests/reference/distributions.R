# Writes distributions-from-r.csv beside this script: values of the distributions, tests and fits that lib/statistics
# computes. Run from the repository: npm run reference, which hands over the file to write.
out <- character(0)
put <- function(name, a, b, c, value)
  out <<- c(out, sprintf("%s,%.17g,%.17g,%.17g,%.17g", name, a, b, c, value))

for (x in c(1e-3, 0.3, 1, 4.5, 20, 1e5)) put("digamma", x, 0, 0, digamma(x))
for (z in c(-37, -20, -8, -6, -5.5, -3, -1, -0.3, 0, 0.5, 1, 2.5)) put("pnorm", z, 0, 0, pnorm(z))
for (df in c(1, 2, 3.5, 10, 30, 1000)) {
  for (p in c(1e-9, 0.001, 0.025, 0.4, 0.6, 0.975)) put("qt", p, df, 0, qt(p, df))
  for (t in c(-12, -2, -0.1, 0.7, 3)) put("pt", t, df, 0, pt(t, df))
}
for (m in c(0.5, 3, 12.3, 200, 5e4)) for (p in c(0.001, 0.025, 0.5, 0.9, 0.999)) {
  put("qpois", p, m, 0, qpois(p, m))
  put("qbinom", p, ceiling(3 * m), 0.31, qbinom(p, ceiling(3 * m), 0.31))
  put("qnbinom", p, 0.7, m, qnbinom(p, size = 0.7, mu = m))
}
for (m in c(0.5, 12.3, 200, 5e4)) for (k in c(floor(m * 0.7), floor(m), ceiling(m * 1.3))) {
  put("dpois", k, m, 0, dpois(k, m)); put("ppois", k, m, 0, ppois(k, m))
  put("upois", k, m, 0, ppois(k - 1, m, lower.tail = FALSE))
  n <- ceiling(3 * m)
  put("dbinom", k, n, 0.31, dbinom(k, n, 0.31)); put("pbinom", k, n, 0.31, pbinom(k, n, 0.31))
  put("ubinom", k, n, 0.31, pbinom(k - 1, n, 0.31, lower.tail = FALSE))
  put("dnbinom", k, 2.4, m, dnbinom(k, size = 2.4, mu = m)); put("pnbinom", k, 2.4, m, pnbinom(k, size = 2.4, mu = m))
  put("unbinom", k, 2.4, m, pnbinom(k - 1, size = 2.4, mu = m, lower.tail = FALSE))
}

p <- c(0.04, 0.0004, 0.3, 0.011, 0.011, 0.2, 0.9, 0.0019)
for (method in c("BH", "BY", "bonferroni", "holm", "hochberg")) {
  adjusted <- p.adjust(p, method)
  for (i in seq_along(p)) put(paste0("p.adjust.", method), i, p[i], 0, adjusted[i])
}

# Marginal likelihood of the gamma by direct maximisation, from several starts, on made-up counts.
x <- c(0, 3, 1, 9, 4, 0, 2, 30, 7, 1); t <- c(2, 5, 1.5, 6, 7, 0.4, 3, 11, 9, 2.2)
nll <- function(q) -sum(dnbinom(x, size = exp(q[1]), mu = exp(q[2]) * t, log = TRUE))
fit <- optim(c(0, 0), nll, method = "BFGS", control = list(reltol = 1e-15, maxit = 1000))
fit <- optim(fit$par, nll, method = "BFGS", control = list(reltol = 1e-15, maxit = 1000))
put("gammapoisson.shape", 0, 0, 0, exp(fit$par[1])); put("gammapoisson.mean", 0, 0, 0, exp(fit$par[2]))

# Over-dispersion: winsorised z-scores, and the method of moments for the variance between groups.
z <- c(-3.1, -0.4, 0.2, 0.9, 1.6, 2.2, -1.2, 5.4, 0.1, -0.8, 3.3, -2.4); s <- seq(0.05, 0.6, by = 0.05)
q <- quantile(z, c(0.1, 0.9)); zw <- pmin(pmax(z, q[1]), q[2]); phi <- mean(zw^2); w <- 1 / s^2; n <- length(z)
put("dispersion.factor", 0, 0, 0, phi)
put("dispersion.between", 0, 0, 0, max(0, (n * phi - (n - 1)) / (sum(w) - sum(w^2) / sum(w))))

# Exact tests of poisson.test; its two-sided p-value is the minimum-likelihood one, its interval the central one.
for (case in list(c(2, 10, 17877, 20000), c(11, 21, 800, 3011), c(0, 7, 3, 5), c(40, 3, 10, 9))) {
  test <- poisson.test(case[1:2], case[3:4])
  put("ratio.p", case[1], case[2], case[3] / case[4], test$p.value)
  put("ratio.low", case[1], case[2], case[3] / case[4], test$conf.int[1])
  put("ratio.high", case[1], case[2], case[3] / case[4], test$conf.int[2])
}

header <- c(paste0("# ", R.version.string, "; base and stats only; written by distributions.R"), "name,a,b,c,value")
writeLines(c(header, out), commandArgs(TRUE)[1])
