# envelope.R FOLDER PATTERNS: seconds of one envelope of Gest, the median of five.
suppressMessages(library(spatstat.explore))
arguments <- commandArgs(trailingOnly = TRUE)
read <- function(name) as.matrix(read.table(file.path(arguments[1], name)))
outline <- read("outline.txt")
marks <- read("marks.txt")
window <- owin(poly = list(x = outline[, 1], y = outline[, 2]))
points <- ppp(marks[, 1], marks[, 2], window = window)
set.seed(5)
times <- replicate(5, system.time(
  envelope(points, Gest, nsim = as.integer(arguments[2]), correction = "none", verbose = FALSE)
)[["elapsed"]])
cat(median(times), "\n")
