# The reference for the mixed model: lme4 on simulated herds. Run in this folder: Rscript lme4.R [FOLDER FOR THE OUTPUT]
# Debian: r-base-core, r-cran-lme4. Writes the simulated lengths and what lme4 makes of them.
suppressPackageStartupMessages(library(lme4))
out <- commandArgs(trailingOnly = TRUE)
out <- if (length(out) > 0) out[1] else "."
set.seed(20270418, kind = "Mersenne-Twister", normal.kind = "Inversion", sample.kind = "Rejection")

simulate_herds <- function(herds, dams, most, herd_sd, dam_sd, residual_sd) {
  rows <- list()
  for (h in seq_len(herds)) {
    herd <- rnorm(1, 0, herd_sd)
    for (d in seq_len(dams)) {
      dam <- rnorm(1, 0, dam_sd)
      n <- sample(most, 1)
      rows[[length(rows) + 1]] <- data.frame(herd = h, dam = sprintf("h%02dd%02d", h, d),
        length = round(346 + herd + dam + residual_sd * rt(n, 6) / sqrt(6 / 4)))
    }
  }
  do.call(rbind, rows)
}

number <- function(x) formatC(x, digits = 9, format = "fg", flag = "#", width = 1)
predictions <- function(names, values) paste0("    ", sprintf('"%s": %s', names, number(values)), collapse = ",\n")

one <- simulate_herds(1, 80, 6, 0, 5, 10)
fit <- lmer(length ~ 1 + (1 | dam), data = one, REML = TRUE)
v <- as.data.frame(VarCorr(fit))
one_mean <- fixef(fit)[[1]]
one_dams <- ranef(fit)$dam

many <- simulate_herds(15, 12, 5, 3, 5, 10)
nested <- lmer(length ~ 1 + (1 | herd) + (1 | dam), data = many, REML = TRUE)
w <- as.data.frame(VarCorr(nested))
of <- function(frame, group) frame$vcov[frame$grp == group]
many_herds <- ranef(nested)$herd
many_dams <- ranef(nested)$dam
herd_of <- many$herd[match(rownames(many_dams), many$dam)]

write.csv(one, file.path(out, "one-herd.csv"), row.names = FALSE, quote = FALSE)
write.csv(many, file.path(out, "herds.csv"), row.names = FALSE, quote = FALSE)
cat(sprintf('{
  "made_by": "R %s.%s, lme4 %s",
  "one_herd": {
    "mean": %s, "dam_variance": %s, "residual_variance": %s,
    "dams": {
%s
    }
  },
  "herds": {
    "mean": %s, "herd_variance": %s, "dam_variance": %s, "residual_variance": %s,
    "dams": {
%s
    }
  }
}
', R.version$major, R.version$minor, as.character(packageVersion("lme4")),
  number(one_mean), number(of(v, "dam")), number(of(v, "Residual")),
  predictions(rownames(one_dams), one_mean + one_dams[[1]]),
  number(fixef(nested)[[1]]), number(of(w, "herd")), number(of(w, "dam")), number(of(w, "Residual")),
  predictions(rownames(many_dams), fixef(nested)[[1]] + many_herds[as.character(herd_of), 1] + many_dams[[1]])),
  file = file.path(out, "lme4.json"))
