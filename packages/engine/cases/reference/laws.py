"""The laws of the network files (see ../network/README.md), written down once more and apart from the program that they check.

Every law is evaluated as it is stated: fan paths by bracketing the pressure balance in Q, tall openings by adding up
horizontal slices, node pressures by a general root finder. Nothing here is fast.
"""

import math

import numpy as np
from scipy.optimize import brentq, root
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components

KELVIN = 273.15


def number(value):
    return float(value)


def as_list(value):
    if value is None:
        return []
    return value if isinstance(value, list) else [value]


class Constants:
    def __init__(self, given):
        self.g = number(given.get("g_m_s2", 9.80665))
        self.p_atm = number(given.get("p_atm_Pa", 101325))
        self.R = number(given.get("R_J_kgK", 287.055))
        self.cp = number(given.get("cp_J_kgK", 1006))
        self.rho_ref = number(given.get("rho_ref_kg_m3", 1.2))
        self.sigma = number(given.get("sigma_W_m2K4", 5.670374419e-8))


def profile_at(points, t):
    if not isinstance(points, list):
        return number(points)
    return float(np.interp(t, [number(p[0]) for p in points], [number(p[1]) for p in points]))


def curve_pressure(curve, Q):
    if "poly" in curve:
        poly = curve["poly"]
        return number(poly["p0"]) - number(poly.get("a", 0)) * Q - number(poly.get("b", 0)) * Q * abs(Q)
    xs = [number(p[0]) for p in curve["points"]]
    ys = [number(p[1]) for p in curve["points"]]
    if Q <= xs[0]:
        k = 0
    elif Q >= xs[-1]:
        k = len(xs) - 2
    else:
        k = int(np.searchsorted(xs, Q, side="right")) - 1
    return ys[k] + (ys[k + 1] - ys[k]) / (xs[k + 1] - xs[k]) * (Q - xs[k])


def series_terms(path, on):
    """(a, b, [(K, area)]) of everything in series, stopped fans included."""
    a = b = 0.0
    minor = []
    parts = [(f, "a", "b") for f in as_list(path.get("filter"))] + [(r, "a_lin", "b_quad") for r in as_list(path.get("resistance"))]
    for part, key_a, key_b in parts:
        a += number(part.get(key_a, 0))
        b += number(part.get(key_b, 0))
        minor += [(number(k["K"]), number(k["area_m2"])) for k in as_list(part.get("K"))]
    for fan, runs in zip(as_list(path.get("fan")), on):
        if not runs:
            rest = fan.get("stopped") or {}
            a += number(rest.get("a_lin", 0))
            b += number(rest.get("b_quad", 0))
            minor += [(number(k["K"]), number(k["area_m2"])) for k in as_list(rest.get("K"))]
    return a, b, minor


def fan_path_balance(path, on, scale, dp, rho_from, rho_to, Q):
    a, b, minor = series_terms(path, on)
    rise = sum(curve_pressure(fan["curve"], Q) for fan, runs in zip(as_list(path.get("fan")), on) if runs)
    rho = rho_from if Q >= 0 else rho_to
    loss = a * Q + b * Q * abs(Q) + sum(K / (2 * A * A) for K, A in minor) * rho * Q * abs(Q)
    return dp + scale * rise - loss


def path_flow(path, on, scale, dp_at, rho_from, rho_to, constants):
    """kg/s from `from` to `to`; dp_at(z) is the pressure difference at a height."""
    kind = path["type"]
    if kind == "fixed_flow":
        return number(path["kg_s"])
    z = number(path.get("z_m", 0))
    dp = dp_at(z)
    if kind == "orifice":
        rho = rho_from if dp >= 0 else rho_to
        lin = number(path.get("dp_lin_Pa", 1e-3))
        size = number(path.get("count", 1)) * number(path["Cd"]) * number(path["area_m2"])
        return size * math.sqrt(2 * rho) * dp * (dp * dp + lin * lin) ** -0.25
    if kind == "crack":
        rho = rho_from if dp >= 0 else rho_to
        lin = number(path.get("dp_lin_Pa", 1e-3))
        n = number(path["n"])
        return rho * number(path.get("c_m3_s", path.get("c"))) * dp * (dp * dp + lin * lin) ** ((n - 1) / 2)
    if kind == "tall_opening":
        height = number(path["height_m"])
        slices = 20000
        heights = z + (np.arange(slices) + 0.5) * height / slices
        dps = dp_at(heights)
        rho = np.where(dps >= 0, rho_from, rho_to)
        per_slice = number(path["Cd"]) * number(path["width_m"]) * height / slices
        return float(np.sum(np.sign(dps) * per_slice * np.sqrt(2 * rho * np.abs(dps))))
    if kind == "fan_path":
        balance = lambda Q: fan_path_balance(path, on, scale, dp, rho_from, rho_to, Q)
        reach = 1e-3
        while balance(-reach) < 0 or balance(reach) > 0:
            reach *= 2
            if reach > 1e6:
                raise RuntimeError("no flow balances " + path["name"])
        Q = brentq(balance, -reach, reach, xtol=1e-18, rtol=8.9e-16, maxiter=500)
        return Q * (rho_from if Q >= 0 else rho_to)
    raise RuntimeError("unknown path type " + kind)


def solve_pressures(zones, paths, densities, flow_of, constants, start):
    """Node pressures of the solved zones by name, so that the flows into each of them add up to nothing."""
    names = [z["name"] for z in zones]
    solved = [z["name"] for z in zones if z["pressure"] == "solved"]
    fixed = {z["name"]: number(z.get("p_ref_Pa", 0)) for z in zones if z["pressure"] == "fixed"}
    if not solved:
        return fixed
    # Only paths whose flow follows the pressure tie pressures together.
    ties = [(names.index(p["from"]), names.index(p["to"])) for p in paths if p["type"] != "fixed_flow"]
    graph = coo_matrix((np.ones(len(ties)), tuple(zip(*ties)) if ties else ((), ())), shape=(len(names), len(names)))
    _, island = connected_components(graph, directed=False)
    anchored = {island[names.index(n)] for n in fixed}
    pinned = {}
    unknown = []
    for name in solved:
        here = island[names.index(name)]
        if here not in anchored:
            anchored.add(here)
            pinned[name] = 0.0
        else:
            unknown.append(name)
    if not unknown:
        return {**fixed, **pinned}

    def residual(x):
        pressures = {**fixed, **pinned, **dict(zip(unknown, x))}
        net = dict.fromkeys(unknown, 0.0)
        for path in paths:
            m = flow_of(path, pressures)
            if path["from"] in net:
                net[path["from"]] -= m
            if path["to"] in net:
                net[path["to"]] += m
        return np.array([net[name] for name in unknown])

    guess = np.array([start.get(name, 0.0) for name in unknown])
    x = newton(residual, guess)
    return {**fixed, **pinned, **dict(zip(unknown, x))}


def newton(residual, x):
    """Newton with a difference Jacobian and halved steps; a general root finder where that stalls."""
    r = residual(x)
    for _ in range(200):
        size = np.max(np.abs(r))
        if size < 1e-15:
            return x
        J = np.empty((len(x), len(x)))
        for k in range(len(x)):
            h = 1e-7 * max(1e-3, abs(x[k]))
            up, down = x.copy(), x.copy()
            up[k] += h
            down[k] -= h
            J[:, k] = (residual(up) - residual(down)) / (2 * h)
        step = np.linalg.solve(J, -r)
        share = 1.0
        while share > 1e-6:
            trial = x + share * step
            r_trial = residual(trial)
            if np.max(np.abs(r_trial)) < size:
                break
            share /= 2
        else:
            break
        moved = np.max(np.abs(share * step))
        x, r = trial, r_trial
        if moved < 1e-14 * max(1.0, np.max(np.abs(x))):
            return x
    if np.max(np.abs(r)) < 1e-13:
        return x
    found = root(residual, x, method="hybr", tol=1e-15)
    if np.max(np.abs(found.fun)) > 1e-12:
        raise RuntimeError(f"pressures not found: residual {np.max(np.abs(found.fun))}")
    return found.x


def all_crossings(path, on, scale, dp, rho_from, rho_to, low=-0.2, high=0.5):
    """Every Q m3/s at which a fan path balances, with its slope, by scanning and bracketing."""
    grid = np.linspace(low, high, 700_001)
    values = np.array([fan_path_balance(path, on, scale, dp, rho_from, rho_to, Q) for Q in grid])
    roots = []
    for k in np.flatnonzero(np.sign(values[:-1]) * np.sign(values[1:]) < 0):
        balance = lambda Q: fan_path_balance(path, on, scale, dp, rho_from, rho_to, Q)
        roots.append((brentq(balance, grid[k], grid[k + 1], xtol=1e-18, rtol=8.9e-16), values[k] > 0))
    return roots
