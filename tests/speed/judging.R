# The same judging as core/judge in one R process: deviation, plain verdict with its undecided band, unevenness against
# the running median of a colour's five neighbours, ranking. Prints milliseconds a pass, median of 200.
#   Rscript judging.R READINGS.csv
readings <- read.csv(commandArgs(trailingOnly = TRUE)[1])

judge <- function(x) {
  side <- ifelse(x$value > x$nominal, x$high - x$nominal, x$nominal - x$low)
  deviation <- (x$value - x$nominal) / side
  band <- pmin(x$u, (x$high - x$low) / 8)
  beyond <- pmax(x$low - x$value, x$value - x$high)
  verdict <- ifelse(beyond <= 0, "within", ifelse(beyond <= band, "undecided", ifelse(x$value < x$low, "low", "high")))
  residual <- numeric(nrow(x))
  for (rows in split(seq_len(nrow(x)), list(x$dimension, x$sharp), drop = TRUE)) {
    v <- x$value[rows]
    if (length(v) >= 5) {
      r <- v - runmed(v, 5)
      s <- 1.4826 * median(abs(r - median(r)))
      residual[rows] <- if (s > 0) abs(r) / s else 0
    }
  }
  order(-abs(deviation), -residual, x$note)
}

times <- replicate(200, {
  t <- proc.time()[["user.self"]]
  for (i in 1:5) judge(readings)
  (proc.time()[["user.self"]] - t) / 5 * 1000
})
cat(mean(times), "\n")
