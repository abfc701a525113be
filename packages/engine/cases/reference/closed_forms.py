"""Closed forms and matrix exponentials of the cases that have them, each derived from its own numbers.

The numbers are written here again, not read from the case files, so that a slip in reading a file shows.
"""

import math

import numpy as np
from scipy.linalg import expm
from scipy.optimize import brentq

SIGMA = 5.670374419e-8
CP = 1006.0
RHO_REF = 1.2
KELVIN = 273.15


def of(case):
    form = FORMS.get(case["id"])
    return form() if form else {}


def method_of(case):
    return METHODS.get(case["id"], "closed form")


def density(celsius, pressure=101325.0):
    return pressure / (287.055 * (celsius + KELVIN))


def linear(A, b, x0, t):
    """x(t) of x' = A x + b, by the exponential of the matrix that holds both."""
    n = len(x0)
    M = np.zeros((n + 1, n + 1))
    M[:n, :n] = A
    M[:n, n] = b
    return expm(M * t)[:n, :n] @ x0 + expm(M * t)[:n, n]


def warming(T0, T_end, tau, t):
    return T_end + (T0 - T_end) * math.exp(-t / tau)


def wall_two_layers():
    area = 0.9
    ply, foam = 0.006 / (0.13 * area), 0.01 / (0.035 * area)
    C = np.array([500 * 1600 * 0.006 * area] * 3 + [30 * 1450 * 0.01 * area] * 2)
    G = 1 / np.array(
        [1 / (8 * area) + ply / 2, ply, ply, ply / 2 + foam / 2, foam, foam / 2 + 1 / (6.5 * area)]
    )
    A = np.zeros((5, 5))
    for k in range(5):
        A[k, k] = -(G[k] + G[k + 1]) / C[k]
        if k > 0:
            A[k, k - 1] = G[k] / C[k]
        if k < 4:
            A[k, k + 1] = G[k + 1] / C[k]
    b = np.array([G[0] * 45 / C[0], 0, 0, 0, G[5] * 21 / C[4]])
    at = {t: linear(A, b, np.full(5, 21.0), t) for t in (600, 7200)}
    return {
        "T_w.1@600s": at[600][0],
        "T_w.3@600s": at[600][2],
        "T_w.5@600s": at[600][4],
        "T_w.1@7200s": at[7200][0],
        "T_w.5@7200s": at[7200][4],
    }


def slab_symmetric_cooling():
    half, k, rho, c, h = 0.009, 0.13, 500.0, 1600.0, 7.6923076923
    biot, alpha = h * half / k, k / (rho * c)
    centre = {}
    for t in (300, 900, 1800, 3600):
        fourier = alpha * t / half**2
        total = 0.0
        for n in range(200):
            zeta = brentq(lambda z: z * math.sin(z) - biot * math.cos(z), n * math.pi + 1e-12, n * math.pi + math.pi / 2)
            total += 4 * math.sin(zeta) / (2 * zeta + math.sin(2 * zeta)) * math.exp(-(zeta**2) * fourier)
        centre[f"T_board.31@{t}s"] = 100 * total
    return centre


def radiation_to_cold():
    k = 0.055 * 0.9 * 0.8 * SIGMA / 800
    T = lambda t: (383.15**-3 + 3 * k * t) ** (-1 / 3) - KELVIN
    return {"T_plate@600s": T(600), "T_plate@3600s": T(3600)}


def radiation_to_room():
    k, Ts, T0 = 0.0552 * 0.9 * SIGMA / 520, 294.15, 383.15
    # The integral of dT/(T^4 - Ts^4) is (1/(4 Ts^3)) ln((T - Ts)/(T + Ts)) - (1/(2 Ts^3)) atan(T/Ts).
    F = lambda T: (math.log((T - Ts) / (T + Ts)) / 4 - math.atan(T / Ts) / 2) / Ts**3
    T = lambda t: brentq(lambda x: F(T0) - F(x) - k * t, Ts + 1e-9, T0, xtol=1e-13) - KELVIN
    return {f"T_bed@{t}s": T(t) for t in (300, 1200, 3600)}


def cracks_in_series():
    n, c1, c2 = 0.65, 0.0008, 0.0013
    c = (c1 ** (-1 / n) + c2 ** (-1 / n)) ** -n
    Q = c * 10**n
    m = 1.2 * Q
    return {"flow_first": m, "flow_second": m, "p_between": 10 - (Q / c1) ** (1 / n)}


def crack_law():
    law = lambda dp, T: density(T) * 0.001 * dp * (dp**2 + 0.002**2) ** ((0.65 - 1) / 2)
    return {"flow_a": law(0.0005, 40), "flow_b": law(0.002, 40), "flow_c": law(5, 40), "flow_d": law(-5, 21)}


def orifices_series_parallel():
    side, behind = 0.61 * (0.002 + 12 * 0.0001), 0.65 * 0.004
    both = (side**-2 + behind**-2) ** -0.5
    m = both * math.sqrt(2 * 1.2 * 4)
    share = 0.002 / (0.002 + 12 * 0.0001)
    p = (m / behind) ** 2 / (2 * 1.2)
    return {"flow_one": m * share, "flow_many": m * (1 - share), "flow_outlet": m, "p_bay": p}


def positive_root(a, b, c):
    """Q > 0 of c = a Q + b Q^2."""
    return (-a + math.sqrt(a * a + 4 * b * c)) / (2 * b)


def fans_in_series():
    b = 90000 + 120000 + 30000 + 15000 + 1.2 / (2 * 0.005**2)
    Q = positive_root(500 + 300 + 1800, b, 30 + 45 - 2)
    return {
        "flow_exhaust": 1.2 * Q,
        "part_exhaust/filter": 1800 * Q + 30000 * Q * Q,
        "part_exhaust/b_quad": 15000 * Q * Q,
        "part_exhaust/exit": 1.2 / (2 * 0.005**2) * Q * Q,
    }


def fan_density_scaling():
    rho = density(60)
    s = rho / RHO_REF
    Q = positive_root(s * 1400 + 1500 + 240, s * 175000 + 50000 + 5.6 * rho / (2 * 0.005**2), s * 72)
    return {"flow_exhaust": rho * Q}


def stopped_fan_back_flow():
    rho = density(21)  # the air comes from the room
    b = 50000 + rho * (3.5 / (2 * 0.005**2) + 2 / (2 * 0.004**2))
    Q = -positive_root(30 + 1500 + 240, b, 6.0)
    return {"flow_exhaust": rho * Q, "part_exhaust/filter": 1500 * Q - 50000 * Q * Q}


def overwhelmed_fan():
    Q = -positive_root(900 + 1500, 80000 + 50000, 40 - 25)
    return {"flow_exhaust": 1.15 * Q}


def thermostat_starts_on():
    C, G_off, G_on = 3000.0, 3.0, 3.0 + 0.01 * CP
    t = C / G_on * math.log((50 - 21) / (30 - 21))
    T = warming(30, 21, C / G_off, 1800 - t)
    return {
        "switch_1": 0.0,
        "switch_2": t,
        "switch_count": 2,
        "T_bay@1800s": T,
        "runtime_fan": t,
        "peak_bay": 50.0,
        "peaktime_bay": 0.0,
    }


def bed_too_weak():
    tau, top = 900 / 1.3, 21 + 100 / 1.3
    end = warming(21, top, tau, 4700)
    return {
        "T_bed@1200s": warming(21, top, tau, 900),
        "T_bed@5000s": end,
        "T_bed@7200s": warming(end, 21, tau, 2200),
        "bedpower_E@4000s": 100.0,
        "bedpower_E@6000s": 0.0,
        "energy_bed_E": 100.0 * 4700,
    }


def air_change_make_up():
    """Room and bay: heat and vapour, with all the flows known: an exponential of a 2 by 2 matrix each."""
    m, V, Vb = 0.012, 54.0, 0.6
    each = V * 0.4 / 3600
    into = RHO_REF * each + m
    A = np.array(
        [
            [-(45 + 6 + into * CP) / 200000, 6 / 200000],
            [(6 + m * CP) / 3000, -(6 + m * CP) / 3000],
        ]
    )
    b = np.array([(1100 + (45 + into * CP) * 5) / 200000, 120 / 3000])
    q = m / RHO_REF
    B = np.array([[-(each + q) / V, 0], [q / Vb, -q / Vb]])
    c = np.array([(0.1 + (each + q) * 5.0) / V, 0.8 / Vb])
    found = {}
    for t in (3600, 14400):
        found[f"T_room@{t}s"], found[f"T_bay@{t}s"] = linear(A, b, np.array([21.0, 21.0]), t)
        found[f"voc_room@{t}s"], found[f"voc_bay@{t}s"] = linear(B, c, np.array([20.0, 20.0]), t)
    rate, rest = (each + q) / V, (0.1 + (each + q) * 5) / (each + q)
    found["mean_voc_room"] = rest + (20 - rest) * (1 - math.exp(-rate * 14400)) / (rate * 14400)
    return found


def sealed_island():
    Q, A = 0.0003, np.array([[-0.0003 / 0.4, 0.0003 / 0.4], [0.0003 / 0.6, -0.0003 / 0.6]])
    b = np.array([3e6 / 0.4, 0.0])
    found = {"flow_hole@3600s": 0.0}
    for t in (600, 3600):
        found[f"pn_left@{t}s"], found[f"pn_right@{t}s"] = linear(A, b, np.array([2e10, 1e9]), t)
    return found


def windows():
    C, G, F = 2500.0, 3.2, 0.005 * CP
    T = 21.0
    found = {"T_bay@500s": T, "flow_in@999s": 0.0, "flow_in@1000s": 0.005, "flow_in@3000s": 0.0}
    for t0, t1, watts, flow in (
        (500, 1000, 80, 0),
        (1000, 2500, 80, F),
        (2500, 3000, 0, F),
        (3000, 4000, 0, 0),
        (4000, 4600, 80, 0),
        (4600, 5000, 0, 0),
    ):
        T = warming(T, 21 + watts / (G + flow), C / (G + flow), t1 - t0)
        if t1 != 4000:
            found[f"T_bay@{t1}s"] = T
    found["energy_source_heater"] = 80.0 * 2600
    return found


def recirculation():
    V, d, k = 0.6, 2.0 / 3600, 25 / 3600 * 0.9 / 0.6
    S = 1e8 / V
    C1 = 1e9 * math.exp(-(d + k) * 600)
    rise = lambda t: warming(C1, S / (d + k), 1 / (d + k), t - 600)
    C2 = rise(3600)
    return {
        "pn_bay@600s": C1,
        "pn_bay@1000s": rise(1000),
        "pn_bay@3600s": C2,
        "pn_bay@7200s": C2 * math.exp(-d * 3600),
    }


def emission_by_mode():
    n, V = 0.6 / 3600, 40.0
    C, found = 8.0, {}
    for t0, t1, rate in ((0, 1000, 0.001), (1000, 4000, 0.02), (4000, 9000, 1.1), (9000, 14400, 0.001)):
        C = warming(C, 3 + rate / (n * V), 1 / n, t1 - t0)
        found[f"voc_room@{t1}s"] = C
    return found


def filter_in_back_flow():
    q, Vr, Vb = 0.006 / RHO_REF, 30.0, 0.5

    def matrix(eff_exhaust, eff_inlet, room, bay):
        # Air runs room -> bay through the exhaust's filter and bay -> room through the inlet's.
        return np.array(
            [
                [-q / Vr - room / 3600, q * (1 - eff_inlet) / Vr],
                [q * (1 - eff_exhaust) / Vb, -q / Vb - bay / 3600],
            ]
        )

    found = {}
    for t in (600, 7200):
        pn = linear(matrix(0.95, 0.2, 0.4, 1.2), np.array([0, 5e8 / Vb]), np.array([4e9, 9e10]), t)
        voc = linear(matrix(0.4, 0, 0, 0), np.zeros(2), np.array([15.0, 80.0]), t)
        found[f"pn_room@{t}s"], found[f"pn_bay@{t}s"] = pn
        if t == 600:
            found["voc_room@600s"] = voc[0]
        found[f"voc_bay@{t}s"] = voc[1]
    return found


def constant_density():
    return {"flow_low": 0.0, "flow_high": 0.0, "p_bay": 0.0}


def empty_schedule():
    T = lambda t: warming(18, 21 + 6 / 2.8, 2500 / 2.8, t)
    return {
        "T_bay@900s": T(900),
        "T_bay@7200s": T(7200),
        "T_bed@900s": warming(60, 21, 500 / 0.9, 900),
        "energy_bed_A": 0.0,
        "energy_machine_A": 6.0 * 7200,
    }


def outdoor_ramp():
    tau, r = 2500 / 3.0, 8 / 3600
    ramp = lambda t: 18 + r * (t - tau + tau * math.exp(-t / tau))
    return {
        "T_bay@900s": ramp(900),
        "T_bay@3600s": ramp(3600),
        "T_bay@7200s": warming(ramp(3600), 26, tau, 3600),
        "T_room@1800s": 22.0,
    }


def other_constants():
    rho_room, rho_bay = density(21, 70000), density(45, 70000)
    total = (rho_room - rho_bay) * 3.72 * 1.0  # Pa over the metre between the openings
    low, high = 0.61 * 0.005 * math.sqrt(2 * rho_room), 0.61 * 0.003 * math.sqrt(2 * rho_bay)
    # m = low sqrt(dp) = high sqrt(total - dp)
    dp = total * high**2 / (low**2 + high**2)
    m = low * math.sqrt(dp)
    return {"flow_low": m, "flow_high": m, "dp_low": dp}


def one_crossing():
    # On the piece from 0.004 to 0.009: 33 - 3600 (Q - 0.004) = 8 + 1500 Q.
    return {"count": 1, "Q_1_stable": (33 + 3600 * 0.004 - 8) / (3600 + 1500) * 3600}


FORMS = {
    "20-wall-two-layers": wall_two_layers,
    "21-slab-symmetric-cooling": slab_symmetric_cooling,
    "22-radiation-to-cold": radiation_to_cold,
    "23-radiation-to-room": radiation_to_room,
    "24-cracks-in-series": cracks_in_series,
    "25-crack-law": crack_law,
    "26-orifices-series-parallel": orifices_series_parallel,
    "27-fans-in-series": fans_in_series,
    "29-fan-density-scaling": fan_density_scaling,
    "30-stopped-fan-back-flow": stopped_fan_back_flow,
    "31-overwhelmed-fan": overwhelmed_fan,
    "33-thermostat-starts-on": thermostat_starts_on,
    "34-bed-too-weak": bed_too_weak,
    "38-air-change-make-up": air_change_make_up,
    "39-sealed-island": sealed_island,
    "40-windows": windows,
    "42-recirculation": recirculation,
    "43-emission-by-mode": emission_by_mode,
    "44-filter-in-back-flow": filter_in_back_flow,
    "46-constant-density": constant_density,
    "47-empty-schedule": empty_schedule,
    "49-outdoor-ramp": outdoor_ramp,
    "50-other-constants": other_constants,
    "52-one-crossing": one_crossing,
}

METHODS = {
    "20-wall-two-layers": "matrix exponential",
    "21-slab-symmetric-cooling": "Fourier series of the slab with films",
    "38-air-change-make-up": "matrix exponential",
    "39-sealed-island": "matrix exponential",
    "44-filter-in-back-flow": "matrix exponential",
}
