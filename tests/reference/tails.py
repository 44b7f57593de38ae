"""Writes tails.tsv beside this script: incomplete gamma and beta tails, far quantiles and log gamma to 25 digits.

Run from the repository: npm run reference, which hands over the file to write (needs mpmath 1.3.0). The parameters are doubles.
"""
from pathlib import Path
import sys
import mpmath as m

m.mp.dps = 45
lines = []
TINY = m.mpf(10) ** -42


def put(name, a, b, c, value):
    lines.append("\t".join([name, repr(float(a)), repr(float(b)), repr(float(c)), m.nstr(value, 25)]))


def gamma_tails(a, x):
    a, x = m.mpf(a), m.mpf(x)
    weight = m.exp(a * m.log(x) - x - m.loggamma(a + 1))
    if x < a + 1:
        term = total = m.mpf(1)
        n = 0
        while term > total * TINY:
            n += 1
            term *= x / (a + n)
            total += term
        return weight * total, 1 - weight * total
    if a == int(a):
        # A finite sum of Poisson probabilities, from the largest down.
        term = total = m.mpf(1)
        n = 1
        while n < a and term > total * TINY:
            term *= (a - n) / x
            n += 1
            total += term
        upper = weight * a / x * total
        return 1 - upper, upper
    # Backward evaluation of Legendre's continued fraction, deep enough for 40 digits.
    depth = int(1000 + 60 * m.sqrt(a))
    value = x + 1 - a + 2 * depth
    for i in range(depth, 0, -1):
        value = x + 1 - a + 2 * (i - 1) - i * (i - a) / value
    upper = weight * a / value
    return 1 - upper, upper


for a in [1e-3, 0.05, 0.5, 1, 3, 30, 199.5, 200, 1000, 12345, 1e6]:
    for z in [-7, -4, -1, 0, 1, 4, 7]:
        x = float(a * (1 - 1 / (9 * a) + z / (3 * a**0.5)) ** 3)
        if x > 0:
            lower, upper = gamma_tails(a, x)
            put("gamma.lower", a, x, 0, lower)
            put("gamma.upper", a, x, 0, upper)


def beta_tails(a, b, x, y):
    """Both tails where x + y = 1, from the side on which the series is short; 45 digits leave plenty for the other one."""
    # The terminating or fast series x^a y^b / (a B) * 2F1(a+b, 1; a+1; x), all terms positive.
    weight = m.exp(a * m.log(x) + b * m.log(y) + m.loggamma(a + b) - m.loggamma(a) - m.loggamma(b))

    def series(p, q, t):
        term = total = m.mpf(1)
        n = 0
        while term > total * TINY:
            term *= (p + q + n) * t / (p + 1 + n)
            n += 1
            total += term
        return total / p

    if x <= 0.5:
        lower = weight * series(a, b, x)
        return lower, 1 - lower, weight
    upper = weight * series(b, a, y)
    return 1 - upper, upper, weight


LARGE = [(1, 1e6), (10.5, 1e6), (1e6, 1), (5e5, 5e5), (1e6, 1e6), (999001, 1000), (1e6, 9e6)]
for a, b in [(0.5, 0.5), (0.5, 30), (2, 3), (12.5, 400), (1000, 9000), (1, 1e5), (37, 1e5), (5e4, 5e4), *LARGE]:
    mean, spread = a / (a + b), (a * b / (a + b + 1)) ** 0.5 / (a + b)
    for z in [-7, -3, 0, 3, 7] if (a, b) in LARGE else [-6, -3, -1, 0, 1, 3, 6]:
        x = float(mean + z * spread)
        if 0 < x < 1:
            lower, upper, _ = beta_tails(m.mpf(a), m.mpf(b), m.mpf(x), 1 - m.mpf(x))
            put("beta.lower", a, b, x, lower)
            put("beta.upper", a, b, x, upper)

# Quantiles by Newton steps on the logarithm of the tail against the logit, where it is concave; p is the lower tail, or the upper.
for a, b in [(1, 3), (3, 997), (50.5, 50), (1, 1e6), (10.5, 1e6)]:
    for p in [1e-12, 0.025]:
        for name, side, sign in [("beta.quantile.lower", 0, 1), ("beta.quantile.upper", 1, -1)]:
            # From the middle, by steps that stay short: the far tails are below what 45 digits can tell from nothing.
            logit = m.log(m.mpf(a) / b)
            for _ in range(200):
                x, y = 1 / (1 + m.exp(-logit)), 1 / (1 + m.exp(logit))
                tails = beta_tails(m.mpf(a), m.mpf(b), x, y)
                value, weight = tails[side], tails[2]
                step = max(min(m.log(value / m.mpf(p)) * value / weight, m.mpf(0.5)), m.mpf(-0.5))
                logit -= sign * step
                if abs(step) < m.mpf(10) ** -28:
                    break
            put(name, p, a, b, 1 / (1 + m.exp(-logit)))

for a in [1, 2, 10, 100, 1000, 1e4, 1e5, 1e6]:
    for p in [1e-12, 1e-6, 0.025]:
        for name, side, sign in [("gamma.quantile.lower", 0, -1), ("gamma.quantile.upper", 1, 1)]:
            z = float(m.sqrt(2) * m.erfinv(1 - 2 * m.mpf(p))) * sign
            x = m.mpf(max(a * (1 - 1 / (9 * a) + z / (3 * a**0.5)) ** 3, 1e-14))
            target = m.mpf(p)
            for _ in range(30):
                value = gamma_tails(a, x)[side]
                slope = m.exp(a * m.log(x) - x - m.loggamma(a)) * (-sign)
                step = m.log(value / target) * value / slope
                x = x * m.exp(-step)
                if abs(step) < m.mpf(10) ** -28:
                    break
            put(name, p, a, 0, x)

for x in [1e-8, 0.3, 0.999999, 1.000001, 1.7, 1.999999, 2.000001, 7.5, 123.4, 1e6]:
    put("lgamma", x, 0, 0, m.loggamma(m.mpf(x)))

header = f"# mpmath {m.__version__}, 45 digits, written by tails.py\nname\ta\tb\tc\tvalue\n"
Path(sys.argv[1]).write_text(header + "\n".join(lines) + "\n")
