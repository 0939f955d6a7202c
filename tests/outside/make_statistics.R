#!/usr/bin/env Rscript
# What R's own tests, intervals and fits say, written into the tables beside this script.
# Debian 12: apt-get install r-base-core. Run in this folder: Rscript make_statistics.R
# The tests read the committed tables and need no R.

versions <- R.version.string
exact <- function(x) {  # as short as reads back to the same number
  short <- formatC(x, digits = 15, format = "g", width = 1)
  ifelse(is.na(x), "", ifelse(as.numeric(short) == x, short,
                              formatC(x, digits = 17, format = "g", width = 1)))
}
cell <- function(x) paste(exact(x), collapse = " ")
write_table <- function(file, source, rows) {
  out <- file(file, "w")
  writeLines(c(paste0("# Made by make_statistics.R with ", versions, "."),
               paste("# Source:", source),
               paste(names(rows), collapse = ",")), out)
  for (i in seq_len(nrow(rows))) {
    line <- vapply(rows, function(column) {
      if (is.character(column)) column[i] else exact(column[i])
    }, "")
    writeLines(paste(line, collapse = ","), out)
  }
  close(out)
}
rows_of <- function(list_of_rows) do.call(rbind, lapply(list_of_rows, function(row) {
  as.data.frame(row, stringsAsFactors = FALSE)
}))

# Shares: counts at the edges, ties of likelihood (half), thin and thick shares, many trials.
shares <- expand.grid(count = c(0, 1, 3, 6, 10, 11, 12), trials = c(12, 20, 60),
                      share = c(0.01, 0.1, 0.25, 0.5, 0.8))
shares <- rbind(shares, data.frame(count = c(0, 1, 5, 5, 480, 30, 500, 0),
                                   trials = c(1, 1, 5, 5, 500, 500, 500, 500),
                                   share = c(0.3, 0.3, 0.5, 0.2, 0.97, 0.04, 0.999, 0.002)))
shares$confidence <- rep(c(0.95, 0.99, 0.9), length.out = nrow(shares))
write_table("r_shares.csv", "R 4.2.2; binom.test, two-sided as R has it, interval of Clopper and Pearson",
  rows_of(Map(function(count, trials, share, confidence) {
    two <- binom.test(count, trials, share, conf.level = confidence)
    list(count = count, trials = trials, share = share, confidence = confidence,
         two_sided = two$p.value,
         at_least = binom.test(count, trials, share, "greater")$p.value,
         at_most = binom.test(count, trials, share, "less")$p.value,
         low = two$conf.int[1], high = two$conf.int[2])
  }, shares$count, shares$trials, shares$share, shares$confidence)))

sums <- list(list(4, c(6, 3), c(0.2, 0.5)), list(9, c(6, 3), c(0.2, 0.5)),
             list(1, c(10, 20, 5), c(0.01, 0.02, 0.3)), list(12, c(10, 20, 5), c(0.1, 0.4, 0.3)),
             list(40, c(60, 80), c(0.25, 0.3)), list(70, c(60, 80), c(0.25, 0.3)))
write_table("r_share_sums.csv", "R 4.2.2; dbinom, several binomials added by convolution",
  rows_of(lapply(sums, function(one) {
    chance <- 1
    for (i in seq_along(one[[2]]))
      chance <- rowSums(outer(seq(0, length(chance) + one[[2]][i] - 1), seq_along(chance) - 1,
        function(total, before) dbinom(total - before, one[[2]][i], one[[3]][i]) *
          chance[before + 1]))
    list(count = one[[1]], trials = cell(one[[2]]), shares = cell(one[[3]]),
         at_least = sum(chance[seq_along(chance) > one[[1]]]))
  })))

draws <- list(c(5, 8, 20, 30, 1), c(5, 8, 20, 30, 2.5), c(0, 4, 10, 10, 0.3), c(8, 8, 20, 30, 1),
              c(30, 60, 400, 300, 1.7), c(50, 60, 400, 300, 1.7), c(3, 40, 5, 80, 0.5),
              c(12, 15, 900, 1100, 4))
write_table("r_draws_of_two_kinds.csv", "R 4.2.2; fisher.test, one-sided with an odds ratio",
  rows_of(lapply(draws, function(one) {
    count <- one[1]; drawn <- one[2]; first <- one[3]; second <- one[4]
    table <- matrix(c(count, first - count, drawn - count, second - drawn + count), 2)
    list(count = count, drawn = drawn, first = first, second = second, odds = one[5],
         at_least = fisher.test(table, or = one[5], alternative = "greater")$p.value)
  })))

counts <- expand.grid(count = c(0, 1, 2, 5, 16, 40, 250), mean = c(0.2, 3, 16, 260))
counts$confidence <- rep(c(0.95, 0.99, 0.9), length.out = nrow(counts))
write_table("r_counts.csv", "R 4.2.2; poisson.test, interval of Garwood",
  rows_of(Map(function(count, mean, confidence) {
    two <- poisson.test(count, r = mean, conf.level = confidence)
    list(count = count, mean = mean, confidence = confidence,
         at_least = poisson.test(count, r = mean, alternative = "greater")$p.value,
         at_most = poisson.test(count, r = mean, alternative = "less")$p.value,
         low = two$conf.int[1], high = two$conf.int[2])
  }, counts$count, counts$mean, counts$confidence)))

rates <- list(c(11, 8.2, 23, 10.4, 0.95), c(3, 40, 17, 38.5, 0.95), c(0, 5, 9, 6, 0.95),
              c(120, 55, 80, 60, 0.99), c(7, 1, 7, 1, 0.95), c(2, 30, 1, 12.5, 0.9),
              c(45, 12.25, 19, 12.25, 0.95), c(1, 3.5, 0, 4, 0.95))
write_table("r_rate_ratios.csv", "R 4.2.2; poisson.test of two counts, exact interval and chance",
  rows_of(lapply(rates, function(one) {
    test <- poisson.test(one[c(1, 3)], one[c(2, 4)], conf.level = one[5])
    high <- test$conf.int[2]
    list(count_a = one[1], exposure_a = one[2], count_b = one[3], exposure_b = one[4],
         confidence = one[5], ratio = if (one[3] > 0) unname(test$estimate) else NA,
         low = test$conf.int[1], high = if (is.finite(high)) high else NA, chance = test$p.value)
  })))

z <- c(-8, -5, -3, -1.959963984540054, -1, -0.25, 0, 1e-6, 0.5, 1.6448536269514722, 2.5, 4, 6)
write_table("r_normal.csv", "R 4.2.2; pnorm and qnorm",
  data.frame(z = z, below = pnorm(z), chance = c(1e-12, 1e-6, 0.00135, 0.01, 0.025, 0.05, 0.3, 0.5,
    0.7, 0.9, 0.95, 0.975, 0.9999), quantile = qnorm(c(1e-12, 1e-6, 0.00135, 0.01, 0.025, 0.05, 0.3,
    0.5, 0.7, 0.9, 0.95, 0.975, 0.9999))))
student <- expand.grid(chance = c(0.05, 0.5, 0.9, 0.975, 0.995), freedom = c(1, 2, 3, 7, 28, 200))
write_table("r_student.csv", "R 4.2.2; qt", cbind(student, quantile = qt(student$chance, student$freedom)))

set.seed(7)
families <- list(c(0.01, 0.04, 0.03), c(0.05), c(0.2, 0.2, 0.2, 0.001), c(0.9, 0.5, 0.04, 0.04),
                 c(1, 0, 0.5), round(runif(9), 4)^2, round(runif(25), 5)^3)
write_table("r_holm.csv", "R 4.2.2; p.adjust, method holm (Holm 1979)",
  rows_of(lapply(families, function(p) list(chances = cell(p), adjusted = cell(p.adjust(p, "holm"))))))

# Exact limits: as many beyond each as three sigma leave of a normal value.
limits <- expand.grid(mean_rate = c(0.4, 1.403669724770642, 6.5, 16), exposure = c(0.25, 1, 3.7, 40))
tail <- 0.00135
write_table("r_exact_limits.csv", "R 4.2.2; qpois, the last counts inside 0.00135 on either side",
  cbind(limits,
        low_count = qpois(tail, limits$mean_rate * limits$exposure),
        high_count = qpois(1 - tail, limits$mean_rate * limits$exposure)))

# Filter: a line through pressures, and Fieller's limits of the day on which it meets the limit.
trends <- list(list(0:7 * 3, c(101, 108, 113, 122, 127, 137, 140, 151), 250),
               list(c(0, 1, 4, 9, 16), c(90, 95, 93, 108, 117), 180),
               list(c(0, 10, 20), c(120, 134, 145), 200),
               list(0:5, c(100, 140, 95, 150, 104, 155), 300))
write_table("r_filter_days.csv", "R 4.2.2; lm and qt, Fieller's limits by the roots of his quadratic",
  rows_of(lapply(trends, function(one) {
    day <- one[[1]]; pressure <- one[[2]]; limit <- one[[3]]
    fit <- lm(pressure ~ day)
    a <- unname(coef(fit)[1] - limit); b <- unname(coef(fit)[2])
    v <- vcov(fit); t2 <- qt(0.975, length(day) - 2)^2
    # (a + b x)^2 = t2 (v11 + 2 x v12 + x^2 v22)
    k2 <- b^2 - t2 * v[2, 2]; k1 <- 2 * (a * b - t2 * v[1, 2]); k0 <- a^2 - t2 * v[1, 1]
    ends <- if (k2 > 0) sort((-k1 + c(-1, 1) * sqrt(k1^2 - 4 * k2 * k0)) / (2 * k2)) else c(NA, NA)
    list(days = cell(day), pressures_pa = cell(pressure), limit_pa = limit, rise_pa_d = b,
         due_day = -a / b, early_day = ends[1], late_day = ends[2])
  })))

# Air: wanted velocities are those of 29 CFR 1910.94 table G-10 (50 to 200 ft/min), readings ours.
fpm <- 0.00508
air <- list(list(100 * fpm, c(0.56, 0.58, 0.55, 0.60, 0.57, 0.59), 5),
            list(100 * fpm, c(0.50, 0.53, 0.48, 0.55, 0.52, 0.51), 5),
            list(150 * fpm, c(0.60, 0.58, 0.66, 0.63), 3),
            list(50 * fpm, c(0.26, 0.27, 0.26, 0.27, 0.26, 0.27, 0.26, 0.27, 0.26), 1),
            list(200 * fpm, c(1.02), 10))
write_table("r_airflow.csv",
  "R 4.2.2; mean and sd, expanded uncertainty k = 2 of JCGM 100:2008, wanted values of 29 CFR 1910.94 table G-10",
  rows_of(lapply(air, function(one) {
    v <- one[[2]]
    u <- 2 * sqrt((if (length(v) > 1) var(v) / length(v) else 0) + (mean(v) * one[[3]] / 200)^2)
    list(wanted_m_s = one[[1]], velocities_m_s = cell(v), instrument_percent = one[[3]],
         mean_m_s = mean(v), low_m_s = mean(v) - u, high_m_s = mean(v) + u,
         word = if (mean(v) - u > one[[1]]) "over" else if (mean(v) + u < one[[1]]) "under"
                else "too near to call")
  })))

# Film: means and spreads add, the chance of passing a limit is the worse of two normal tails.
films <- list(
  list("clear", c(52, 54, 53), 0, 0, c(18, 4), 2, c(25, 5), 1.5, c(4, 1), 0, c(3, 2.5), c(0.8, 0.6), 0, 40, 12),
  list("total", c(131, 129, 130, 133), c(62, 60, 61), 0, c(18, 4), 2, c(25, 5), 1.5, c(4, 1), 0, c(3), c(0.8), 0, 40, 12),
  list("total", c(160, 158), c(70, 73), 1, c(30, 6), 3, c(25, 5), 2, c(4, 1), 30, c(4, 3, 1), c(1, 0.9, 0.3), 2, 30, 12),
  list("coats", 0, 0, 0, c(18, 4), 2, c(25, 5), 1.5, c(4, 1), 0, c(2), c(0.5), 0, 40, 12),
  list("coats", 0, 0, 0, c(18, 4), 3, c(28, 3), 1.5, c(3, 0.5), 20, c(5, 3), c(1.5, 1), 3, 40, 15))
write_table("r_film_chances.csv", "R 4.2.2; pnorm, mean and sums of variances, sealer 22 (4) um where there is one",
  rows_of(lapply(films, function(f) {
    names(f) <- c("from", "after", "before", "sealer", "base", "coats", "build", "gauge", "valleys",
                  "edge", "steps", "sds", "taken", "leave", "most")
    share <- 1 - f$edge / 100
    if (f$from == "clear") { mean <- mean(f$after); var <- f$gauge^2 / length(f$after) }
    if (f$from == "total") {
      mean <- mean(f$after) - mean(f$before) - f$base[1] - 22 * f$sealer
      var <- f$gauge^2 * (1 / length(f$after) + 1 / length(f$before)) + f$base[2]^2 + 16 * f$sealer
    }
    if (f$from == "coats") { mean <- f$coats * f$build[1]; var <- (f$coats * f$build[2])^2 }
    mean <- mean * share - f$valleys[1]; var <- var * share^2 + f$valleys[2]^2
    left <- pnorm(f$leave, mean - sum(f$steps), sqrt(var + sum(f$sds^2)))
    over <- pnorm(f$most, f$taken + sum(f$steps), sqrt(sum(f$sds^2)), lower.tail = FALSE)
    list(from = f$from, after_um = cell(f$after), before_um = cell(f$before), sealer = f$sealer,
         base_um = cell(f$base), coats = f$coats, build_um = cell(f$build), gauge_sd_um = f$gauge,
         valleys_um = cell(f$valleys), edge_percent = f$edge, steps_um = cell(f$steps),
         steps_sd_um = cell(f$sds), taken_um = f$taken, leave_um = f$leave, most_um = f$most,
         mean_um = mean, sd_um = sqrt(var), low_um = mean - qnorm(0.95) * sqrt(var),
         chance_percent = 100 * max(left, over))
  })))

# Learning: a normal prior and normal differences, variances known.
seen <- list(list(c(3, 1.5), c(2.1, 2.6, 3.4, 1.9, 2.2), 1.5, 6),
             list(c(3, 1.5), c(2.4, 2.5, 2.4, 2.6, 2.5, 2.4, 2.5), 1.5, 3),
             list(c(6, 0.4), c(9, 1, 4, 12, 3, 8, 2, 7, 11, 5), 0.5, 10))
write_table("r_removals.csv", "R 4.2.2; mean, var and the normal posterior, spread not under the gauge's",
  rows_of(lapply(seen, function(one) {
    prior <- one[[1]]; taken <- one[[2]]; gauge <- one[[3]]
    each <- max(var(taken), 2 * gauge^2 / one[[4]])
    weight <- c(1 / prior[2]^2, length(taken) / each)
    list(prior_um = cell(prior), taken_um = cell(taken), gauge_sd_um = gauge, readings = one[[4]],
         mean_um = sum(weight * c(prior[1], mean(taken))) / sum(weight),
         sd_um = max(gauge, 1 / sqrt(sum(weight))))
  })))

# Dew point by the Magnus form of the WMO, on the shop's grid.
grid <- expand.grid(humidity_percent = c(30, 40, 50, 60, 65, 70, 80, 85, 90),
                    air_c = c(5, 10, 15, 18, 20, 22, 24, 25, 28, 30, 35, 40))
gamma <- log(grid$humidity_percent / 100) + 17.62 * grid$air_c / (243.12 + grid$air_c)
write_table("r_dew_points.csv", "WMO CIMO guide annex 4.B; Magnus form with 17.62 and 243.12 C over water",
  cbind(grid[c("air_c", "humidity_percent")], dew_c = 243.12 * gamma / (17.62 - gamma)))
