"""Integrates an exported cure problem with SciPy's BDF and a sparse Jacobian's pattern.

    python3 heat_bdf.py FILE HOURS

FILE is written by `pourbench heat --peer`. Prints peak C, hour, seconds, version.
"""
import sys
import time

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.sparse import bmat, csr_matrix, identity

raw = open(sys.argv[1], "rb").read()
n, links, nx = np.frombuffer(raw, "<i4", 3)
at = 12
par = np.frombuffer(raw, "<f8", 9, at)
at += 72


def take(kind, count, size):
    global at
    v = np.frombuffer(raw, kind, count, at)
    at += size * count
    return v


start, to, place = take("<i4", n + 1, 4), take("<i4", links, 4), take("<i4", n, 4)
cap, film, heat, temp, cure = (take("<f8", n, 8) for _ in range(5))
g = take("<f8", links, 8)
k1, e1, k2, e2, m, tg0, tg1, lam, air = par
G = csr_matrix((g, to, start), shape=(n, n))
out = np.asarray(G.sum(axis=1)).ravel() + film
poured = heat > 0


def rate(a, t):
    x = (1 / 295.15 - 1 / (t + 273.15)) / 8.314462618
    a = np.clip(a, 0, 1)
    tg = tg0 + (tg1 - tg0) * lam * a / (1 - (1 - lam) * a)
    return (k1 * np.exp(e1 * x) + k2 * np.exp(e2 * x) * a**m) * (1 - a) ** 2 / (1 + np.exp((tg - t - 12) / 7))


def rhs(_, y):
    t, a = y[:n], y[n:]
    r = np.where(poured, rate(a, t), 0)
    return np.concatenate(((G @ t - out * t + film * air + heat * r) / cap, r))


pattern = bmat([[G + identity(n), identity(n)], [identity(n), identity(n)]]) != 0
began = time.time()
s = solve_ivp(rhs, (0, 3600 * float(sys.argv[2])), np.concatenate((temp, cure)), method="BDF", rtol=3e-4, atol=np.r_[np.full(n, 0.012), np.full(n, 3e-4)], jac_sparsity=pattern)
hot = s.y[:n][poured].max(axis=0)
i = min(max(int(hot.argmax()), 1), len(hot) - 2)
c = np.polyfit(s.t[i - 1 : i + 2] - s.t[i], hot[i - 1 : i + 2], 2)
x = -c[1] / (2 * c[0])
print(f"{np.polyval(c, x):.4f} {(s.t[i] + x) / 3600:.4f} {time.time() - began:.4f} {scipy.__version__}")
