"""Answers questions of statistics with scipy and statsmodels, one JSON line each."""

import json
import sys

import numpy
from scipy import optimize, stats
from statsmodels.stats.proportion import proportion_confint


def wilson(hits, of):
    ours = stats.binomtest(hits, of).proportion_ci(method="wilson")
    theirs = proportion_confint(hits, of, method="wilson")
    return {"scipy": [ours.low, ours.high], "statsmodels": list(theirs)}


def trees_for_mean(spread, within):
    """The first sample whose mean is near enough, by Student's t."""
    for trees in range(2, 1001):
        if stats.t.ppf(0.975, trees - 1) * spread / trees**0.5 <= within:
            return trees
    return None


def fit(limit, seen, start):
    """Least squares for the curve with a given limit; the start is free when none is given."""
    ages, girths = numpy.array(seen).T

    def curve(age, rate, begins):
        return limit * (1.0 - numpy.exp(-rate * (age - begins)))

    tight = {"ftol": 1e-15, "xtol": 1e-15, "gtol": 1e-15, "maxfev": 100_000}
    if start is None:
        found, _ = optimize.curve_fit(curve, ages, girths, p0=(0.15, 0.3), **tight)
    else:
        found, _ = optimize.curve_fit(lambda age, rate: curve(age, rate, start), ages, girths, p0=(0.15,), **tight)
        found = [found[0], start]
    misses = girths - curve(ages, *found)
    return {"rate": float(found[0]), "start": float(found[1]), "squares": float(misses @ misses)}


def answer(question):
    match question["ask"]:
        case "quantile":
            return float(stats.norm.ppf(question["share"]))
        case "below":
            return float(stats.norm.cdf(question["value"]))
        case "hits":
            return int(stats.binom.ppf(question["share"], question["of"], question["chance"]))
        case "wilson":
            return wilson(question["hits"], question["of"])
        case "trees_for_mean":
            return trees_for_mean(question["spread"], question["within"])
        case "fit":
            return fit(question["limit"], question["seen"], question["start"])


for line in sys.stdin:
    print(json.dumps(answer(json.loads(line))))
