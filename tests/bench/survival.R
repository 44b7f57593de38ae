# Times survfit and survreg on the rows of one CSV (entry, exit, event), without the start of R and the reading of the file.
# Prints the median processor seconds of both together over three runs. survreg knows no late entry and is given the exits alone.
suppressMessages(library(survival))
d <- read.csv(commandArgs(TRUE)[1])
d$entry <- ifelse(d$entry == 0, -1, d$entry) # R wants every life to enter before it leaves, also one that fails at age 0
seconds <- replicate(3, sum(system.time({
  curve <- survfit(Surv(entry, exit, event) ~ 1, d, conf.type = "log-log")
  fit <- survreg(Surv(pmax(exit, 0.5), event) ~ 1, d, dist = "weibull")
})[c("user.self", "sys.self")]))
cat(median(seconds), "\n")
cat(R.version.string, "; survival", format(packageVersion("survival")), "\n")
