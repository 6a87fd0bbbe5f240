"""One-dimensional cures by the method of lines: what the checks named "by lines" compare with.

    python3 cure_slabs.py

Cells of equal thickness, their balances exact, rates exact (no tables), integrated by SciPy's
BDF to 1e-8 (carbon 1e-6: its rate jumps). Each case is printed on n and 2n cells; digits that
agree are converged. Ran with SciPy 1.10.1, NumPy 1.24.2 (Debian python3-scipy):

    50 mm slab   119.7714 and 119.7709 C at 7.145 h, middle 37.061, 67.208, 51.085 C at 4, 6, 12 h
    25 mm slab   114.2819 and 114.2782 C at 3.323 h
    carbon       199.538 and 199.537 C at 125.606 min, cure .22779 .29141 .58954 at 60, 90, 120 min
    glass        146.344 and 146.338 C at 83.368 min
"""
import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import bmat, diags, identity

R = 8.314462618


def solve(thick, n, rho, c, k, heat, rate, low, high, air, temp, cure, end, rtol=1e-8):
    dz = thick / n
    g_low, g_high = 1 / (1 / low + dz / 2 / k), 1 / (1 / high + dz / 2 / k)

    def rhs(t, y):
        temp, cure = y[:n], y[n:]
        r = rate(cure, temp)
        q = k * np.diff(temp) / dz
        into = np.zeros(n)
        into[:-1] += q
        into[1:] -= q
        into[0] += g_low * (air(t) - temp[0])
        into[-1] += g_high * (air(t) - temp[-1])
        return np.concatenate(((into / dz + rho * heat * r) / (rho * c), r))

    pattern = bmat([[diags([1, 1, 1], [-1, 0, 1], shape=(n, n)), identity(n)], [identity(n), identity(n)]]) != 0
    return solve_ivp(rhs, (0, end), np.r_[np.full(n, temp), np.full(n, cure)], method="BDF", rtol=rtol, atol=1e-9, jac_sparsity=pattern, dense_output=True, max_step=60.0)


def middle(v):
    n = len(v) // 2
    return (9 * (v[n - 1] + v[n]) - v[n - 2] - v[n + 1]) / 16


def peak(s, n):
    t = np.linspace(0, s.t[-1], 20001)
    v = s.sol(t)[:n].max(0)
    i = v.argmax()
    c = np.polyfit(t[i - 1 : i + 2] - t[i], v[i - 1 : i + 2], 2)
    x = -c[1] / 2 / c[0]
    return np.polyval(c, x), t[i] + x


def casting(k25):
    return lambda a, t: k25 * np.exp(55e3 / R * (1 / 298.15 - 1 / (t + 273.15))) * (0.2 + a) * np.clip(1 - a, 0, None) ** 2


def carbon(a, t):
    k = lambda f, e: f * np.exp(-e / R / (t + 273.15))
    low = (k(2.102e9, 80.7e3) + k(-2.014e9, 77.8e3) * a) * (1 - a) * (0.47 - a)
    return np.maximum(0, np.where(a <= 0.3, low, k(1.96e5, 56.6e3) * (1 - a))) / 60


def glass(a, t):
    return 3.7e22 * np.exp(-167.4e3 / R / (t + 273.15)) * np.clip(a, 0, 1) ** 0.524 * np.clip(1 - a, 0, None) ** 1.476 / 60


def cycle(minutes, temps):
    return lambda t: np.interp(t / 60, minutes, temps)


for n in (100, 200):
    s = solve(0.05, n, 1100, 1900, 0.2, 280e3, casting(3.255e-5), 2, 10, lambda t: 22, 22, 0, 24 * 3600)
    p, at = peak(s, n)
    print(f"50 mm slab {n}: {p:.4f} C at {at / 3600:.4f} h", [f"{h} h {middle(s.sol(h * 3600)[:n]):.4f} C {middle(s.sol(h * 3600)[n:]):.5f}" for h in (4, 6, 12)])
for n in (50, 100):
    s = solve(0.025, n, 1100, 1900, 0.2, 280e3, casting(7.235e-5), 2, 10, lambda t: 22, 22, 0, 12 * 3600)
    p, at = peak(s, n)
    print(f"25 mm slab {n}: {p:.4f} C at {at / 3600:.4f} h")
for n in (50, 100):
    s = solve(0.0254, n, 1520, 942, 0.4457, 198.9e3, carbon, 1e6, 1e6, cycle([0, 36, 96, 120], [25, 116, 116, 177]), 25, 0, 2.6 * 3600, 1e-6)
    p, at = peak(s, n)
    print(f"carbon {n}: {p:.4f} C at {at / 60:.4f} min, {middle(s.sol(2700)[:n]):.4f} C at 45 min", [f"{m} min {middle(s.sol(60 * m)[n:]):.5f}" for m in (60, 90, 120)])
for n in (50, 100):
    s = solve(0.0254, n, 1890, 1260, 0.2163, 77.5e3, glass, 1e6, 1e6, cycle([0, 35, 75, 95], [20, 90, 90, 130]), 20, 1e-4, 2.6 * 3600)
    p, at = peak(s, n)
    print(f"glass {n}: {p:.4f} C at {at / 60:.4f} min")
