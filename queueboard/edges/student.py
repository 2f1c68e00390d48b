"""Student's t distribution, which says how far the mean of a few readings may lie from the truth.

The share beyond a value comes from the incomplete beta function (Abramowitz and Stegun 26.5.8, its continued fraction
by Lentz's method, both from memory); the value to a share is found by Newton's steps.
"""

from functools import lru_cache
from math import exp, inf, isinf, lgamma, log, log1p, pi, sqrt

TINY = 1e-300
CLOSE = 1e-15
MOST_STEPS = 10_000


def share_beyond(t: float, freedom: float) -> float:
    """The two-sided share: how often |T| is at least |t| by chance, 0 to 1.

    freedom: degrees of freedom, above 0, whole or not (Welch); infinite is the normal distribution.
    """
    from statistics import NormalDist

    if isinf(freedom):
        return 2 * NormalDist().cdf(-abs(t))
    both = freedom + t * t
    return _beta_share(freedom / 2, 0.5, freedom / both, t * t / both)


@lru_cache(maxsize=256)
def t_value(freedom: float, sure: float = 0.95) -> float:
    """The t within which a share `sure` lies (both sides), such as 2.262 for 9 degrees of freedom and 0.95.

    freedom: above 0; sure: above 0 and below 1.
    """
    from statistics import NormalDist

    # Newton's steps from the normal's value, which lies below: the share falls ever slower, so that none goes too far.
    t = NormalDist().inv_cdf((1 + sure) / 2)
    step = t
    while step > CLOSE * t:
        step = (share_beyond(t, freedom) - (1 - sure)) / (2 * _density(t, freedom))
        t += step
    return t


def _density(t: float, freedom: float) -> float:
    """How thick the distribution is at t."""
    from statistics import NormalDist

    if isinf(freedom):
        return NormalDist().pdf(t)
    more = (freedom + 1) / 2
    return exp(lgamma(more) - lgamma(freedom / 2) - more * log1p(t * t / freedom)) / sqrt(freedom * pi)


def _beta_share(a: float, b: float, x: float, rest: float) -> float:
    """The regularized incomplete beta function I_x(a, b); rest is 1 - x, which near 1 is more than x can tell."""
    if x <= 0:
        return 0.0
    if rest <= 0:
        return 1.0
    log_x, log_rest = (log(x), log1p(-x)) if x < rest else (log1p(-rest), log(rest))
    front = exp(lgamma(a + b) - lgamma(a) - lgamma(b) + a * log_x + b * log_rest)
    if x < (a + 1) / (a + b + 2):
        return front * _fraction(a, b, x) / a
    return 1 - front * _fraction(b, a, rest) / b


def _fraction(a: float, b: float, x: float) -> float:
    above, below = 1.0, _kept(1 - (a + b) * x / (a + 1))
    below = 1 / below
    value, step = below, inf
    place = 0
    while abs(step - 1) > CLOSE and place < MOST_STEPS:
        place += 1
        even = place * (b - place) * x / ((a + 2 * place - 1) * (a + 2 * place))
        below, above = 1 / _kept(1 + even * below), _kept(1 + even / above)
        value *= below * above
        odd = -(a + place) * (a + b + place) * x / ((a + 2 * place) * (a + 2 * place + 1))
        below, above = 1 / _kept(1 + odd * below), _kept(1 + odd / above)
        step = below * above
        value *= step
    return value


def _kept(number: float) -> float:
    """Lentz's guard against dividing by nothing."""
    return number if abs(number) > TINY else TINY
