# Works out how much of what varies lies in each grouping, with lme4: Rscript make_sources.R GROUPINGSFILE OUTFILE
suppressPackageStartupMessages(library(lme4))
arguments <- commandArgs(trailingOnly = TRUE)
out <- file(arguments[2], "w")
near <- lmerControl(optimizer = "Nelder_Mead", calc.derivs = FALSE,
                    optCtrl = list(xtol_abs = 1e-11, xtol_rel = 1e-11, ftol_abs = 1e-13, ftol_rel = 1e-15, FtolAbs = 1e-13,
                                   FtolRel = 1e-15, XtolRel = 1e-11, maxfun = 100000),
                    check.conv.singular = "ignore")
for (row in strsplit(grep("^#", readLines(arguments[1]), invert = TRUE, value = TRUE), " *[|] *")) {
  k <- as.integer(row[2])
  numbers <- matrix(as.numeric(strsplit(gsub(",", "", row[3]), " ")[[1]]), ncol = k + 1, byrow = TRUE)
  data <- data.frame(y = numbers[, 1])
  for (at in seq_len(k)) data[[paste0("g", at)]] <- factor(numbers[, at + 1])
  formula <- as.formula(paste("y ~ 1 +", paste0("(1 | g", seq_len(k), ")", collapse = " + ")))
  fitted <- lmer(formula, data, control = near)
  parts <- as.data.frame(VarCorr(fitted))
  of <- c(paste0("g", seq_len(k)), "Residual")
  variances <- parts$vcov[match(of, parts$grp)]
  writeLines(paste("sources |", row[1], "|", paste(format(variances, digits = 10, trim = TRUE), collapse = " ")), out)
}
close(out)
