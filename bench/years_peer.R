# Lines and years together, lme4: Rscript years_peer.R DATA_CSV NAME RUNS
arguments <- commandArgs(TRUE)
suppressPackageStartupMessages(library(lme4))
data <- read.csv(arguments[1])
fit <- function() lmer(cover ~ year + (1 + year | line) + (1 | factor(year)), data, REML = TRUE)
found <- fit()
times <- numeric(0)
for (run in seq_len(as.integer(arguments[3]))) {
  begun <- proc.time()[["elapsed"]]
  for (again in 1:5) found <- fit()
  times <- c(times, (proc.time()[["elapsed"]] - begun) / 5)
}
cat(sprintf('{"task": "T5", "peer": "R-lmer/years", "size": "%s", "times": [%s], "loglik": %.9f}\n', arguments[2],
            paste(times, collapse = ", "), as.numeric(logLik(found))))
