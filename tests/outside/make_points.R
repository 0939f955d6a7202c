#!/usr/bin/env Rscript
# Three published point sets and what spatstat and dbscan say of them, written into the tables
# beside this script. Debian 12: apt-get install --no-install-recommends r-cran-spatstat.data
# r-cran-spatstat.geom r-cran-spatstat.explore r-cran-dbscan. Run here: Rscript make_points.R
# The tests read the committed tables and need no R.

suppressPackageStartupMessages({
  library(spatstat.data); library(spatstat.geom); library(spatstat.random)
  library(spatstat.explore); library(dbscan)
})
packages <- c("spatstat.data", "spatstat.geom", "spatstat.random", "spatstat.explore", "dbscan")
versions <- paste(c(R.version.string, vapply(packages, function(one)
  paste(one, packageVersion(one)), "")), collapse = ", ")
exact <- function(x) {  # as short as reads back to the same number
  short <- formatC(x, digits = 15, format = "g", width = 1)
  ifelse(as.numeric(short) == x, short, formatC(x, digits = 17, format = "g", width = 1))
}
origin <- c(cells = "Crick; Ripley 1977", redwood = "Strauss 1975; subset of Ripley 1977",
            japanesepines = "Numata 1961; Diggle 2003")

head_of <- function(source, input = FALSE) c(
  paste0("# Made by make_points.R with ", versions, "."),
  paste("# Source:", source), if (input) "# Input: no check of its own.")
save_lines <- function(file, ...) writeLines(c(...), file)

near <- monte <- summary <- groups <- character()
for (name in names(origin)) {
  points <- get(name)
  window <- Window(points)
  n <- npoints(points)
  save_lines(paste0("points_", name, ".csv"),
    head_of(paste0("spatstat; point set ", name, " (", gsub(";", ",", origin[name]),
                   "), GPL 2 or later"), TRUE), "x,y",
    paste(exact(points$x), exact(points$y), sep = ","))
  d <- nndist(points)
  near <- c(near, paste(name, seq_len(n), exact(d), sep = ","))
  index <- clarkevans(points, correction = c("none", "Donnelly"))
  summary <- c(summary, paste(c(name, exact(c(area(window), perimeter(window), n, mean(d), min(d),
    max(d), index[["naive"]], index[["Donnelly"]]))), collapse = ","))

  set.seed(1977)
  drawn <- replicate(9999, mean(nndist(runifpoint(n, window))))
  monte <- c(monte, paste(name, 9999, exact((1 + sum(drawn <= mean(d))) / 10000), sep = ","))

  for (eps in c(0.0555, 0.0777, 0.1033, 0.145)) for (least in 3:5) {
    found <- dbscan(cbind(points$x, points$y), eps, least)
    sizes <- sort(tabulate(found$cluster[found$cluster > 0], max(0, found$cluster)), decreasing = TRUE)
    groups <- c(groups, paste(name, exact(eps), least, max(found$cluster), sum(found$cluster == 0),
                              paste(sizes, collapse = " "), sep = ","))
  }
}
four <- ppp(c(.25, .75, .25, .75), c(.25, .25, .75, .75), c(0, 1), c(0, 1))
index <- clarkevans(four, correction = c("none", "Donnelly"))
summary <- c(summary, paste(c("four", exact(c(1, 4, 4, mean(nndist(four)), 0.5, 0.5, index[["naive"]],
                                              index[["Donnelly"]]))), collapse = ","))

save_lines("points_nearest.csv", head_of("spatstat; nndist"), "points,place,distance", near)
save_lines("points_spacing.csv",
  head_of("spatstat; clarkevans, Clark and Evans 1954, Donnelly 1978 with 0.0412"),
  "points,area,perimeter,count,mean,least,most,clark_evans,donnelly", summary)
save_lines("points_chances.csv",
  head_of("spatstat; runifpoint, mean nearest distance of drawn patterns, one-sided"),
  "points,patterns,as_tight", monte)
save_lines("points_groups.csv",
  head_of("R package dbscan; Ester et al. 1996, a core point counts itself"),
  "points,eps,least,groups,alone,sizes", groups)
