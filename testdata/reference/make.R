# Works out check values with the survey and boot packages: Rscript make.R DATAFILE OUTFILE
suppressPackageStartupMessages({
  library(survey)
  library(boot)
})
arguments <- commandArgs(trailingOnly = TRUE)
out <- file(arguments[2], "w")

row <- function(kind, given, ...) {
  writeLines(paste(kind, given, paste(sprintf("%.17g", c(...)), collapse = " "), sep = " | "), out)
}

# One row a line, with its sample and the number and the area (or plot) of its part.
cells <- strsplit(grep("^#", readLines(arguments[1]), invert = TRUE, value = TRUE), " *[|] *")
numbers <- function(text) as.numeric(strsplit(text, " ")[[1]])
lines <- do.call(rbind, lapply(seq_along(cells), function(i) {
  cell <- cells[[i]]
  data.frame(sample = cell[1], part = i, label = cell[2], y = numbers(cell[3]), x = numbers(cell[4]))
}))
sample_of <- function(name) lines[lines$sample == name, ]
plain <- unique(lines$sample[lines$label == "-"])
told <- function(figure) c(coef(figure), SE(figure))

for (name in plain) {
  sample <- sample_of(name)
  n <- nrow(sample)
  design <- svydesign(id = ~1, weights = ~1, data = sample)
  row("ratio", name, told(svyratio(~y, ~x, design)))
  finite <- svydesign(id = ~1, fpc = rep(60, n), data = sample)
  row("ratio of a population", paste(name, 60), told(svyratio(~y, ~x, finite)))
  sample$share <- sample$y / sample$x
  weighted <- svydesign(id = ~1, weights = ~x, data = sample)
  logit <- svyglm(share ~ 1, weighted, family = quasibinomial, control = glm.control(epsilon = 1e-14, maxit = 100))
  for (confidence in c(0.8, 0.9, 0.95)) {
    given <- paste(name, confidence)
    row("t interval", given, confint(svyratio(~y, ~x, design), level = confidence, df = n - 1))
    reach <- qt((1 + confidence) / 2, n - 1) * SE(logit)
    row("logit-t interval", given, plogis(coef(logit) + c(-1, 1) * reach))
  }
}

sample <- sample_of("strata")
area <- as.numeric(sample$label)
sample$weight <- area / sum(unique(area)) / ave(sample$y, sample$part, FUN = length)
design <- svydesign(id = ~1, strata = ~part, weights = ~weight, data = sample)
row("combined ratio", "strata", told(svyratio(~y, ~x, design)))
separate <- predict(svyratio(~y, ~x, design, separate = TRUE), total = as.list(unique(area) / sum(unique(area))))
row("strata", "strata", separate$total, separate$se)

# Two strata of one area: the degrees of freedom are those of Welch's test.
halves <- split(sample_of("halves"), sample_of("halves")$part)
row("strata df", "halves", t.test(halves[[1]]$y / 100, halves[[2]]$y / 100)$parameter)

bunched <- sample_of("plots")
row("plots", "plots", told(svyratio(~y, ~x, svydesign(id = ~part, weights = ~1, data = bunched))))

# BCa with resamples of its own: agrees as far as chance allows.
set.seed(20260101)
bca <- function(sample, areas, ...) {
  figure <- function(data, drawn) {
    d <- data[drawn, ]
    sum(areas / sum(areas) * tapply(d$y, d$part, sum) / tapply(d$x, d$part, sum))
  }
  drawn <- boot(sample, figure, R = 19999, strata = factor(sample$part))
  boot.ci(drawn, conf = 0.9, type = "bca", L = empinf(drawn, type = "jack", stype = "i"))$bca[4:5]
}
for (name in c("even", "uneven", "skewed")) row("bca by chance", paste(name, 0.9), bca(sample_of(name), 1))
row("bca by chance", "strata 0.9", bca(sample_of("strata"), unique(area)))

# Signed ranks of changes without equal sizes and zeros.
visits <- strsplit(grep("^#", readLines(file.path(dirname(arguments[1]), "visits.txt")), invert = TRUE, value = TRUE), " *[|] *")
for (visit in visits) {
  if (visit[1] != "uneven") next
  change <- numbers(visit[3]) - numbers(visit[2])
  for (confidence in c(0.8, 0.9)) {
    test <- wilcox.test(change, conf.int = TRUE, conf.level = confidence, exact = TRUE)
    row("signed rank", paste(visit[1], confidence), test$statistic, test$p.value, test$estimate, test$conf.int)
  }
}
close(out)
