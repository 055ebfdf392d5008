# Works out mixed models of lines and years with lme4, pbkrtest and lmerTest: Rscript make_mixed.R LINESFILE OUTFILE
suppressPackageStartupMessages({
  library(lme4)
  library(pbkrtest)
  library(lmerTest)
})
arguments <- commandArgs(trailingOnly = TRUE)
out <- file(arguments[2], "w")
origin <- 2018

# lme4 stops early by default; so small steps come as near to the summit as its arithmetic lets it
near <- lmerControl(optimizer = "Nelder_Mead", calc.derivs = FALSE,
                    optCtrl = list(xtol_abs = 1e-11, xtol_rel = 1e-11, ftol_abs = 1e-13, ftol_rel = 1e-15, FtolAbs = 1e-13,
                                   FtolRel = 1e-15, XtolRel = 1e-11, maxfun = 100000),
                    check.conv.singular = "ignore")
models <- list(
  "level" = y ~ t + (1 | line),
  "level slope" = y ~ t + (1 + t | line),
  "level year" = y ~ t + (1 | line) + (1 | year),
  "level slope year" = y ~ t + (1 + t | line) + (1 | year),
  "level year site_year" = y ~ t + (1 | line) + (1 | year) + (1 | site_year)
)
cases <- list(whole = 1:4, holes = 1:4, calm = c(1, 3), region = c(1, 3, 5))

cells <- strsplit(grep("^#", readLines(arguments[1]), invert = TRUE, value = TRUE), " *[|] *")
for (cell in cells) {
  numbers <- matrix(as.numeric(strsplit(cell[2], " ")[[1]]), ncol = 4, byrow = TRUE)
  data <- data.frame(line = factor(paste(numbers[, 1], numbers[, 2])), year = factor(numbers[, 3]),
                     site_year = factor(paste(numbers[, 1], numbers[, 3])), t = numbers[, 3] - origin, y = numbers[, 4])
  for (name in names(models)[cases[[cell[1]]]]) {
    fit <- lme4::lmer(models[[name]], data, REML = TRUE, control = near)
    tested <- lmerTest::lmer(models[[name]], data, REML = TRUE, control = near)
    plain <- sqrt(diag(as.matrix(vcov(fit))))
    adjusted <- sqrt(diag(as.matrix(vcovAdj(fit))))
    df <- c(Lb_ddf(c(1, 0), vcov(fit), vcovAdj(fit)), Lb_ddf(c(0, 1), vcov(fit), vcovAdj(fit)))
    satterthwaite <- lmerTest::contest1D(tested, c(0, 1), ddf = "Satterthwaite")$df
    components <- as.data.frame(VarCorr(fit))$vcov
    groups <- VarCorr(fit)
    of_lines <- as.matrix(groups$line)
    others <- c(if (!is.null(groups$year)) groups$year[1], if (!is.null(groups$site_year)) groups$site_year[1])
    variances <- c(if (nrow(of_lines) > 1) of_lines[c(1, 2, 4)] else of_lines[1], others, sigma(fit)^2)
    figures <- c(as.numeric(logLik(fit, REML = TRUE)), fixef(fit), plain, adjusted, df, satterthwaite, variances)
    writeLines(paste("mixed", paste(cell[1], name), paste(sprintf("%.12g", figures), collapse = " "), sep = " | "), out)
  }
}
close(out)
