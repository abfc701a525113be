"""Writes the networks that the reference cabinet must become, from its drawing and from published formulas.

Written apart from the program: nothing is read from it, nor from the cabinet file; the numbers of the drawing stand here again.
Formulas come from where each comment says. What is a choice of the model rather than a law stands under "Choices".
Names of parts are those of the program, so that a test can lay the two side by side.

    python3 by_hand.py          writes *.network.yaml beside it (needs SciPy and PyYAML)
"""

import pathlib
import sys
from math import exp, log, log10, pi, sqrt

import yaml
from scipy.optimize import brentq

HERE = pathlib.Path(__file__).parent

# --- Constants of nature and of the trade -------------------------------------------------------------------------------
G = 9.80665
ATMOSPHERE = 101325.0
R_AIR = 287.055
CP = 1006.0
RHO = 1.2  # air as fans and flows are stated, ISO 5801
SIGMA = 5.670374419e-8

# --- Choices (docs/model.md) ---------------------------------------------------------------------------------------------
DISCHARGE = 0.62  # doors, and the border between low and high air
LINEAR = 0.002  # Pa
FREE_SHARE = 0.6  # of the plan, between low and high air
GAP_AIR = 300.0  # K, viscosity in gaps
BEHIND = 0.25  # m2K/W, from the back of a face through the room's own wall or floor
FOAM, UNDER_FOAM = 0.045, 8.0  # W/(m K), W/(m2 K)
FRAME_LENGTH, FRAME_EPS, EDGE_EPS = 0.3, 0.9, 0.9
STOPPED = 0.4  # discharge of a rotor at rest
BED_FILM = 330.0  # K, for the forced film of a moving bed
PLUME_HEAT, PLUME_AIR = 20.0, 305.0
HOT_END_AIR = 298.15
DUCT_AIR, SLOW, FAST, HOSE = 305.0, 0.7, 2.8, 3.0  # hose: three times a smooth wall's friction
SUN_KEPT = 0.8
BAY_SETTLING = 0.5 / 3600
COAGULATION = 1.0e-15
BURST, TAIL = {"ratio": 5, "time_s": 480}, {"share": 0.1, "time_s": 7200}
MACHINE_FANS = 1.5  # W/(m2 K), what a printing machine's own fans do to films around it
ALONG = 305.0  # K, air along a bay's boards
PER_KELVIN = 0.07  # growth of the particle rate with the nozzle

# --- The drawing ---------------------------------------------------------------------------------------------------------
WIDTH, DEPTH, HEIGHT = 0.8, 0.6, 1.75
BAYS = {"lower": (0.0, 0.86), "upper": (0.878, 1.75)}
PLY = {"thickness_m": 0.018, "k_W_mK": 0.13, "rho_kg_m3": 500.0, "c_J_kgK": 1600.0, "nodes": 2}
BLANKET = {"thickness_m": 0.02, "k_W_mK": 0.04, "rho_kg_m3": 120.0, "c_J_kgK": 1600.0, "nodes": 1}
PLY_EPS, BLANKET_EPS, PANE_EPS = 0.9, 0.92, 0.84
PANE_CAPACITY = 0.004 * 2500.0 * 750.0  # J/(m2 K); 4 mm of glass has one temperature
ROOM_VOLUME = 4 * 3.5 * 2.5
MIDDLE = 1.25
FACTOR = dict(inside=1.1, outside=0.9, bed=1.05, leak=1.2, fan=0.95, plume=0.9, particles=2.0, vapours=0.5, loss=1.1)
HOUR = 3600.0


def plate(speed, length, T):
    """W/(m2 K) of a laminar stream along a plate: Nu = 0.664 Re^(1/2) Pr^(1/3)."""
    Re = speed * length * density(T) / viscosity(T)
    Pr = viscosity(T) * CP / conductivity(T)
    return 0.664 * sqrt(Re) * Pr ** (1 / 3) * conductivity(T) / length


def viscosity(T):
    """Sutherland, US Standard Atmosphere 1976."""
    return 1.458e-6 * T**1.5 / (T + 110.4)


def conductivity(T):
    """US Standard Atmosphere 1976."""
    return 2.64638e-3 * T**1.5 / (T + 245.4 * 10 ** (-12 / T))


def density(T):
    return ATMOSPHERE / (R_AIR * T)


def gap(length, width, depth, bends):
    """Baker, Sharples and Ward 1987: dp = 12 mu z/(L w^3) q + rho (1.5 + n)/(2 L^2 w^2) q^2."""
    a = 12 * viscosity(GAP_AIR) * depth / (length * width**3)
    b = RHO * (1.5 + bends) / (2 * length**2 * width**2)
    return a, b


def carroll(faces):
    """Carroll 1980, by its own iteration F = 1/(1 - A F/sum A F); then the grey surface in series: w = A/((1-e)/e + 1/F)."""
    areas = [area for area, _ in faces]
    F = [1.0] * len(areas)
    for _ in range(2000):
        total = sum(a * f for a, f in zip(areas, F))
        F = [1 / (1 - a * f / total) for a, f in zip(areas, F)]
    return [a / ((1 - e) / e + 1 / f) for (a, e), f in zip(faces, F)]


def water(T, rh):
    """kg of vapour per kg of dry air: ASHRAE Fundamentals 2017 ch. 1 eq. 6 and 20, times the density that stands for air."""
    ln = (-5.8002206e3 / T + 1.3914993 - 4.8640239e-2 * T + 4.1764768e-5 * T**2 - 1.4452093e-8 * T**3 + 6.5459673 * log(T))
    p = rh * exp(ln)
    return RHO * 0.621945 * p / (ATMOSPHERE - p)


def plume_coefficient(bed_side, rise):
    """Heskestad (NIST SP 1026): m = 0.196 (g rho^2/(cp T))^(1/3) Q^(1/3) (z - z0)^(5/3) for Q = 1 W; z0 for 20 W."""
    D = 2 * bed_side / sqrt(pi)
    rho = density(PLUME_AIR)
    q = PLUME_HEAT / (rho * CP * PLUME_AIR * sqrt(G * D) * D**2)
    z0 = D * (-1.02 + 1.4 * q**0.4)
    mass = 0.196 * (G * rho**2 / (CP * PLUME_AIR)) ** (1 / 3) * (rise - z0) ** (5 / 3)
    return FACTOR["plume"] * mass / RHO


def friction(Re):
    """64/Re below 2000, Haaland above 4000, a smooth blend between."""
    if Re <= 2000:
        return 64 / Re
    turbulent = 1 / (1.8 * log10(6.9 / Re)) ** 2
    if Re >= 4000:
        return turbulent
    t = (Re - 2000) / 2000
    s = t * t * (3 - 2 * t)
    return (1 - s) * 64 / Re + s * turbulent


def hose(D, length):
    """Friction of a corrugated hose as a q + b q^2 through its loss at two speeds."""
    area = pi / 4 * D**2

    def over_flow(v):
        Re = v * D * RHO / viscosity(DUCT_AIR)
        return HOSE * friction(Re) * length / D * RHO * v**2 / 2 / (v * area)

    b = (over_flow(FAST) - over_flow(SLOW)) / ((FAST - SLOW) * area)
    return over_flow(SLOW) - b * SLOW * area, b


def through_two(q1, p1, q2, p2):
    """a and b of a q + b q^2 through two points."""
    b = (p2 / q2 - p1 / q1) / (q2 - q1)
    return p1 / q1 - b * q1, b


def parted(points, q):
    for (q0, p0), (q1, p1) in zip(points, points[1:]):
        if q <= q1:
            return p0 + (p1 - p0) * (q - q0) / (q1 - q0)
    return points[-1][1]


def crossing(points, a, b):
    """Where the fan's lines meet a q + b q^2."""
    return brentq(lambda q: parted(points, q) - a * q - b * q * q, 0, points[-1][0], xtol=1e-18, rtol=1e-15)


def seated(efficiency, flow, filter_ab, seat):
    """Part of the flow goes round the filter at the same pressure; it is not cleaned."""
    (A, B), (a, b) = filter_ab, gap(*seat, 0)
    round_it = brentq(
        lambda q: a * q + b * q * q - A * (flow - q) - B * (flow - q) ** 2, 0, flow, xtol=1e-22, rtol=1e-15
    )
    return efficiency * (1 - round_it / flow)


def network(two_zones, held):
    zones, nodes, conductances, walls, convections, radiation = [], [], [], [], [], []
    stars, sources, paths, exchanges, machines, sensors = [], [], [], [], [], []
    start = 21.0

    # --- Room and outdoors -----------------------------------------------------------------------------------------------
    course = [[0, 21.0], [8 * 3600, 22.0], [20 * 3600, 22.0], [24 * 3600, 21.0]]
    outside = dict(T="fixed", T_C=8.0, pressure="fixed", z_ref_m=MIDDLE, volume_m3=1, conc="fixed")
    zones.append({"name": "outdoors", **outside, "p_ref_Pa": 0.0})
    # Wind pressure rho v^2/2 Cp, 3 m/s and Cp 0.3.
    zones.append({"name": "outdoors at through-the-wall", **outside, "p_ref_Pa": 0.5 * RHO * 3.0**2 * 0.3})
    zones.append(dict(name="room without cabinet", T="fixed", T_C=course, pressure="fixed", p_ref_Pa=0.0, z_ref_m=MIDDLE, volume_m3=1, conc="fixed"))
    room = dict(name="room", pressure="fixed", p_ref_Pa=0.0, z_ref_m=MIDDLE, volume_m3=ROOM_VOLUME, conc="free")
    zones.append({**room, **(dict(T="fixed", T_C=course) if held else dict(T="free", T0_C=start, heat_capacity_J_K=500e3))})
    changes = 0.6 / HOUR
    exchanges.append(dict(name="fresh air of the room", a="room", b="room without cabinet", m3_s=changes * ROOM_VOLUME))
    if not held:
        conductances.append(dict(a="room", b="room without cabinet", W_K=60.0 * FACTOR["loss"]))
        # Heat that alone makes a room of this capacity follow its given course: C dT/dt.
        sources.append(dict(name="course of the room 1", node="room", W=500e3 * 1.0 / (8 * 3600), active=dict(windows=[[0, 8 * 3600]])))
        sources.append(dict(name="course of the room 3", node="room", W=-500e3 * 1.0 / (4 * 3600), active=dict(windows=[[20 * 3600, 24 * 3600]])))

    # --- Air of the bays -------------------------------------------------------------------------------------------------
    parts = {}  # bay -> [(zone, from, to)]
    for bay, (z0, z1) in BAYS.items():
        half = (z0 + z1) / 2
        parts[bay] = [(f"{bay}.low", z0, half), (f"{bay}.high", half, z1)] if two_zones else [(bay, z0, z1)]
        for zone, low, high in parts[bay]:
            volume = WIDTH * DEPTH * (high - low)
            zones.append(dict(name=zone, T="free", T0_C=start, heat_capacity_J_K=RHO * CP * volume, pressure="solved", z_ref_m=low, volume_m3=volume, conc="free"))
        if two_zones:
            free = FREE_SHARE * WIDTH * DEPTH
            paths.append(dict(name=f"{bay} from low to high", type="orifice", **{"from": f"{bay}.low"}, to=f"{bay}.high", z_m=half, Cd=DISCHARGE, area_m2=free, count=1, dp_lin_Pa=LINEAR))
            # Cooper 1989 as in NIST SP 1026: 0.10 (g drho A^2.5/rho)^(1/2).
            exchanges.append(dict(name=f"{bay} turning over", a=f"{bay}.low", b=f"{bay}.high", law="horizontal_opening", area_m2=free, round=False, coefficient=0.1))

    # --- Shell -----------------------------------------------------------------------------------------------------------
    enclosures = {bay: [] for bay in BAYS}  # (node, area, emissivity)
    level = WIDTH * DEPTH / (2 * (WIDTH + DEPTH))
    surfaces = {bay: [] for bay in BAYS}  # all but the pane, for the sun: (node, area)

    def wall(name, a, b, area, layers):
        walls.append(dict(name=name, a=a, b=b, area_m2=area, grid="faces", layers=layers, T0_C=start))
        return f"{name}.1", f"{name}.{1 + sum(layer['nodes'] for layer in layers)}"

    def inner(bay, node, zone, area, faces, length, emissivity):
        convections.append(dict(surface=node, air=zone, area_m2=area, faces=faces, length_m=length, factor=FACTOR["inside"]))
        enclosures[bay].append((node, area, emissivity))

    def outer(node, area, faces, length, emissivity):
        convections.append(dict(surface=node, air="room", area_m2=area, faces=faces, length_m=length, factor=FACTOR["outside"]))
        radiation.append(dict(a=node, b="room", area_m2=area, emissivity=emissivity, factor=1))

    for bay in BAYS:
        for zone, low, high in parts[bay]:
            tall = high - low
            suffix = zone.removeprefix(bay)
            front, side = WIDTH * tall, DEPTH * tall
            pane = f"{bay}.front{suffix}"
            nodes.append(dict(name=pane, C_J_K=PANE_CAPACITY * front, T0_C=start))
            inner(bay, pane, zone, front, "vertical", tall, PANE_EPS)
            outer(pane, front, "vertical", HEIGHT, PANE_EPS)
            back = wall(f"{bay}.back{suffix}", zone, "room", front, [PLY])
            inner(bay, back[0], zone, front, "vertical", tall, PLY_EPS)
            surfaces[bay].append((back[0], front))
            # 30 mm of air, ISO 6946: 0.18 m2K/W; then the room's own wall.
            conductances.append(dict(a=back[1], b="room", W_K=front / (0.18 + BEHIND)))
            for face in ("left", "right"):
                board = wall(f"{bay}.{face}{suffix}", zone, "room", side, [PLY])
                inner(bay, board[0], zone, side, "vertical", tall, PLY_EPS)
                outer(board[1], side, "vertical", HEIGHT, PLY_EPS)
                surfaces[bay].append((board[0], side))
    plan = WIDTH * DEPTH
    floor = wall("lower.bottom", parts["lower"][0][0], "room", plan, [PLY])
    inner("lower", floor[0], parts["lower"][0][0], plan, "up", level, PLY_EPS)
    conductances.append(dict(a=floor[1], b="room", W_K=plan / BEHIND))
    surfaces["lower"].append((floor[0], plan))
    under, over = parts["lower"][-1][0], parts["upper"][0][0]
    shelf = wall("lower.top", under, over, plan, [PLY])
    inner("lower", shelf[0], under, plan, "down", level, PLY_EPS)
    inner("upper", shelf[1], over, plan, "up", level, PLY_EPS)
    surfaces["lower"].append((shelf[0], plan))
    surfaces["upper"].append((shelf[1], plan))
    lid = wall("upper.top", parts["upper"][-1][0], "room", plan, [PLY, BLANKET])
    inner("upper", lid[0], parts["upper"][-1][0], plan, "down", level, PLY_EPS)
    outer(lid[1], plan, "up", level, BLANKET_EPS)
    surfaces["upper"].append((lid[0], plan))

    # Sun: W/m2 on the pane of a bay, through 80 % glass, kept by 80 %, on all other surfaces by area.
    sun = [[0, 0.0], [9 * 3600, 0.0], [12 * 3600, 100.0], [15 * 3600, 0.0], [24 * 3600, 0.0]]
    for bay, (z0, z1) in BAYS.items():
        let_in = WIDTH * (z1 - z0) * 0.8 * SUN_KEPT
        lit = sum(area for _, area in surfaces[bay])
        for node, area in surfaces[bay]:
            sources.append(dict(name=f"sun through door on {node}", node=node, W=let_in * area / lit, profile=sun))

    # --- Machines --------------------------------------------------------------------------------------------------------
    side = 0.235
    area, edge = side * side, 4 * side * 0.006
    machine = {
        "left": dict(bay="lower", height=0.09, size=0.5, capacity=502.0, eps=0.9, motion=0.05, frame=(4500.0, 0.55), power=270.0),
        "right": dict(bay="upper", height=0.12, size=0.46, capacity=600.0, eps=0.85, motion=0.0, frame=(6000.0, 0.8), power=300.0),
    }
    for name, m in machine.items():
        bay = m["bay"]
        bed, frame = f"{name}.bed", f"{name}.frame"
        low, high = parts[bay][0][0], parts[bay][-1][0]
        rises = {} if low == high else dict(heat_to=high)
        nodes.append(dict(name=bed, C_J_K=m["capacity"], T0_C=start))
        nodes.append(dict(name=frame, C_J_K=m["frame"][0], T0_C=start))
        forced = {}
        if m["motion"] > 0:
            forced = dict(forced=[dict(h_W_m2K=plate(m["motion"], side, BED_FILM), active=dict(machine=name))])
        convections.append(dict(surface=bed, air=low, area_m2=area, faces="up", length_m=side / 4, factor=FACTOR["bed"], **forced, **rises))
        convections.append(dict(surface=bed, air=low, area_m2=edge, faces="vertical", length_m=0.006, factor=FACTOR["bed"], **rises))
        conductances.append(dict(a=bed, b=low, W_K=FACTOR["bed"] * area / (0.010 / FOAM + 1 / UNDER_FOAM)))
        convections.append(dict(surface=frame, air=low, area_m2=m["frame"][1], faces="vertical", length_m=FRAME_LENGTH, factor=FACTOR["inside"], **rises))
        enclosures[bay] += [(bed, area, m["eps"]), (bed, edge, EDGE_EPS), (frame, m["frame"][1], FRAME_EPS)]
        if two_zones:
            z0, z1 = BAYS[bay]
            c = plume_coefficient(side, (z1 - z0) / 2 - m["height"])
            exchanges.append(dict(name=f"plume of {name}", a=low, b=high, law="plume", coefficient=c, sources=[bed]))
            drawn = dict(left=14.0 + 7.0 + 3.0, right=18.0 + 4.0)[name]
            exchanges.append(dict(name=f"plume of {name}'s motors and board", a=low, b=high, m3_s=c * drawn ** (1 / 3), active=dict(machine=name)))
            if name == "left":
                exchanges.append(dict(name="plume of left at rest", a=low, b=high, m3_s=c * 8.0 ** (1 / 3), active={"not": dict(machine=name)}))

    # A particle: Hatch and Choate, 50 nm, geometric deviation 1.6, 1000 kg/m3; in micrograms.
    particle = pi / 6 * 1000 * (50e-9) ** 3 * exp(4.5 * log(1.6) ** 2) * 1e9
    per_second = 1e10 / 60

    def emitted(zone, nozzle):
        count = per_second * exp(PER_KELVIN * (nozzle - 245)) * FACTOR["particles"]
        of = lambda name, rate, **shape: dict(contaminant=name, zone=zone, rate=rate, **shape)
        return [
            of("PM2.5", count * particle, burst=BURST),
            of("particles", count, burst=BURST),
            of("TVOC", 40 / 60 * FACTOR["vapours"], tail=TAIL),
            of("styrene", 30 / 60 * FACTOR["vapours"], tail=TAIL),
        ]

    top = {bay: parts[bay][-1][0] for bay in BAYS}
    nozzle = lambda watts, celsius: watts * (celsius + 273.15 - HOT_END_AIR) / (225 + 273.15 - HOT_END_AIR)
    for name, zone, electronics, supply, share, standby, hot, motors, idle, mode in (
        ("left", top["lower"], (top["lower"], 7.0), top["lower"], 1 / 0.88 - 1, 8.0, nozzle(16.0, 250), 14.0, 3.0, ("clamp", 100.0, 250)),
        ("right", top["upper"], ("room", 9.0), "room", 1 / 0.90 - 1, 6.0, nozzle(20.0, 245), 18.0, 4.0, ("shim", 60.0, 245)),
    ):
        job, bed_set, celsius = mode
        drawn = hot + motors + electronics[1]
        machines.append(
            dict(
                name=name,
                bed=dict(node=f"{name}.bed", P_max_W=machine[name]["power"], supply=dict(node=supply, share=share)),
                modes=[
                    dict(name="idle", powers=[dict(node=electronics[0], W=standby)]),
                    dict(
                        name=job,
                        bed_set_C=bed_set,
                        powers=[
                            dict(node=zone, W=hot),
                            dict(node=f"{name}.frame", W=motors),
                            dict(node=electronics[0], W=electronics[1]),
                            dict(node=supply, W=idle + drawn * share),
                        ],
                        emission=emitted(zone, celsius),
                    ),
                ],
            )
        )

    for bay in BAYS:
        weights = carroll([(a, e) for _, a, e in enclosures[bay]])
        members = {}
        for (node, _, _), weight in zip(enclosures[bay], weights):
            members[node] = members.get(node, 0.0) + weight
        stars.append(dict(name=f"radiation in {bay}", members=[dict(node=n, weight_m2=w) for n, w in members.items()]))

    # --- Ways for air ----------------------------------------------------------------------------------------------------
    def zone_at(bay, z):
        return next(zone for zone, low, high in reversed(parts[bay]) if z >= low or zone == parts[bay][0][0])

    def leak(bay, part, z, slit):
        a, b = gap(*slit)
        paths.append(dict(name=f"leak of {bay} at {part}, {int(1000 * z + 0.5)} mm", type="fan_path", **{"from": zone_at(bay, z)}, to="room", z_m=z, resistance=[dict(name="gap", a_lin=a, b_quad=b)]))

    for bay, (z0, z1) in BAYS.items():
        tall = z1 - z0
        seal = (0.7e-3 * FACTOR["leak"], 0.018, 0)
        joint = (0.1e-3 * FACTOR["leak"], 0.018, 1)
        for strip in range(4):
            z = z0 + (strip + 0.5) / 4 * tall
            leak(bay, "doors.door", z, (2 * tall / 4, *seal))
            # All twelve edges of a bay, a quarter at each height.
            leak(bay, "joints", z, (WIDTH + DEPTH + tall, *joint))
        leak(bay, "doors.door", z0 if bay == "lower" else z1, (WIDTH, *seal))
        for zone, low, high in parts[bay]:
            paths.append(dict(name=f"open door at {zone}", type="tall_opening", **{"from": zone}, to="room", z_m=low, Cd=DISCHARGE, width_m=WIDTH, height_m=high - low, dp_lin_Pa=LINEAR, open=dict(windows=[[12.5 * 3600, 12.5 * 3600 + 120]])))

    paths.append(dict(name="intake", type="orifice", **{"from": "room"}, to=parts["lower"][0][0], z_m=0.06, Cd=0.61, area_m2=0.12 * 0.05, count=2, dp_lin_Pa=LINEAR))
    # The slot reaches from 1280 to 1380 mm, across the border of low and high air: a piece into each, at its own middle.
    across = [(zone, max(low, 1.28), min(high, 1.38)) for zone, low, high in parts["upper"]]
    for number, (zone, low, high) in enumerate(across, 1):
        paths.append(dict(name="slot" if number == 1 else f"slot {number}", type="orifice", **{"from": "room"}, to=zone, z_m=(low + high) / 2, Cd=0.61, area_m2=0.06 * (high - low), count=1, dp_lin_Pa=LINEAR))
    # The shelf's hole lies at 869 mm: above the lower bay and below the upper one, so between its top and the other's floor.
    paths.append(dict(name="shelf-grid", type="orifice", **{"from": top["lower"]}, to=parts["upper"][0][0], z_m=0.869, Cd=0.65, area_m2=0.1 * 0.08, count=1, dp_lin_Pa=LINEAR))
    # And both ways through it while the lower air is warmer and no net flow floods it: Cooper 1989 again.
    exchanges.append(dict(name="both ways through shelf-grid", a=top["lower"], b=parts["upper"][0][0], law="horizontal_opening", area_m2=0.1 * 0.08, round=False, coefficient=0.1, path="shelf-grid"))

    sheet = [(0.0, 60.0), (40 / HOUR, 36.0), (80 / HOUR, 0.0)]
    mover = lambda speed: [(q * speed * FACTOR["fan"], p * speed**2) for q, p in sheet]
    rotor = pi / 4 * 0.092**2
    medium = through_two(30 / HOUR, 40.0, 60 / HOUR, 88.0)
    seat = (4 * 0.15, 0.2e-3, 0.020)
    round_area = lambda d: pi / 4 * d**2
    fan = lambda path, speed, control: dict(name=f"{path}.fan", curve=dict(points=[list(point) for point in mover(speed)]), control=control, stopped=dict(a_lin=0, b_quad=0, K=[dict(K=1 / STOPPED**2, area_m2=rotor)]))

    # Exhaust: half its dust is in the filter, which doubles its loss at the full load, so 2^0.5 now.
    loaded = tuple(2**0.5 * part for part in medium)
    grains = through_two(30 / HOUR, 12.0, 60 / HOUR, 30.0)
    tube = hose(0.1, 1.5)
    minor = [(0.8, round_area(0.12)), (1.5, min(rotor, round_area(0.1), 0.15**2))]
    a = loaded[0] + grains[0] + tube[0]
    b = loaded[1] + grains[1] + tube[1] + sum(K * RHO / (2 * A**2) for K, A in minor)
    flow = crossing(mover(0.9), a, b) / 2
    shares = {name: seated(clean, flow, loaded, seat) for name, clean in (("particles", 0.995), ("PM2.5", 0.99))}
    by_dial = dict(thermostat="exhaust.fan")
    resistance = [dict(name=n, a_lin=x, b_quad=y) for n, (x, y) in (("filter", loaded), ("carbon", grains), ("duct", tube))]
    losses = [dict(name="other", K=minor[0][0], area_m2=minor[0][1]), dict(name="way in and out", K=minor[1][0], area_m2=minor[1][1])]
    exit_zone = zone_at("upper", 1.68)
    paths.append(dict(name="exhaust", type="fan_path", **{"from": exit_zone}, to="room", z_m=1.68, fan=[fan("exhaust", 0.9, by_dial)], resistance=[*resistance, dict(K=losses)], filter_eff=shares))
    # Its motor sits in the air that it blows into the room; at 90 % speed it takes 0.9^3 of its power.
    sources.append(dict(name="motor of exhaust.fan", node="room", W=4.0 * 0.9**3, active=by_dial))

    hour = dict(windows=[[13 * 3600, 14 * 3600]])
    wall_zone = zone_at("upper", 1.6)
    paths.append(dict(name="through-the-wall", type="fan_path", **{"from": wall_zone}, to="outdoors at through-the-wall", z_m=1.6, fan=[fan("through-the-wall", 1.0, hour)], resistance=[dict(K=[dict(name="hole", K=1 / 0.6**2, area_m2=round_area(0.06))])], flap=dict(opens_at_Pa=3.0, leak_area_m2=1e-4)))

    # The cleaner turns the lower bay's air round at its own operating point.
    turned = crossing(mover(1.0), medium[0], medium[1] + 1.5 * RHO / (2 * rotor**2))
    with_job = dict(windows=[[9 * 3600 - 300, 15 * 3600 + 1800]])
    clean_zone = zone_at("lower", 0.3)
    recirculation = [dict(name="cleaner", zone=clean_zone, m3_s=turned, eff={n: seated(clean, turned, medium, seat) for n, clean in (("particles", 0.995), ("PM2.5", 0.99))}, active=with_job)]
    sources.append(dict(name="motor of cleaner.fan", node=clean_zone, W=4.0, active=with_job))
    if two_zones:
        # A jet entrains about twice its own flow.
        exchanges.append(dict(name="stirring by cleaner", a="lower.low", b="lower.high", m3_s=2 * turned, active=with_job))
    # Along everything in a bay but beds: the cleaner's jet, whose momentum fills half the bay's section, and the machine's own fans.
    lower_tall = BAYS["lower"][1] - BAYS["lower"][0]
    along = sqrt(turned * (turned / rotor) / (WIDTH * lower_tall / 2))
    printer = dict(lower="left", upper="right")
    for link in convections:
        bay = link["air"].split(".")[0]
        if bay not in BAYS or link["surface"].endswith(".bed"):
            continue
        length = link["length_m"] if link["faces"] == "vertical" else sqrt(link["area_m2"])
        films = [dict(h_W_m2K=FACTOR["inside"] * plate(along, length, ALONG), active=with_job)] if bay == "lower" else []
        link["forced"] = [*films, dict(h_W_m2K=FACTOR["inside"] * MACHINE_FANS, active=dict(machine=printer[bay]))]
    sources.append(dict(name="light", node=top["lower"], W=10.0, active=dict(windows=[[8 * 3600, 22 * 3600]])))

    # --- Control ---------------------------------------------------------------------------------------------------------
    sensors.append(dict(name="dial", at=zone_at("upper", 0.878 + 0.8), lag_s=60.0, offset_K=0.3))
    thermostats = [dict(name="exhaust.fan", sensor="dial", on_above_C=28.0, off_below_C=26.0, initial="off")]
    schedule = [
        dict(machine="left", mode="clamp", start_s=9 * 3600, end_s=15 * 3600),
        dict(machine="right", mode="shim", start_s=10 * 3600, end_s=13 * 3600),
    ]

    # --- What the air carries --------------------------------------------------------------------------------------------
    bay_zones = [zone for bay in BAYS for zone, _, _ in parts[bay]]
    settling = 0.5 / HOUR + 50 / HOUR / ROOM_VOLUME
    contaminants = []
    for name, unit, scale, inside, outdoors, settles, joining in (
        ("particles", "1/m3", 1e9, 3000e6, 6000e6, True, COAGULATION),
        ("PM2.5", "µg/m3", 5, 6.0, 10.0, True, 0.0),
        ("TVOC", "µg/m3", 10, 100.0, 20.0, False, 0.0),
        ("styrene", "µg/m3", 10, 1.0, 0.0, False, 0.0),
        ("water", "kg/m3", 1e-3, water(21 + 273.15, 0.45), water(8 + 273.15, 0.80), False, 0.0),
    ):
        # n (C_fresh - C) = (settling + K C) C: the room without the cabinet stays as it is.
        lost = (settling if settles else 0.0) + joining * inside
        fresh = inside * (changes + lost) / changes
        contaminants.append(
            dict(
                name=name,
                unit=unit,
                scale=scale,
                initial={**{z: inside for z in ("room", *bay_zones)}, "outdoors": outdoors, "outdoors at through-the-wall": outdoors, "room without cabinet": fresh},
                deposition_per_s={**({"room": settling, **{z: BAY_SETTLING for z in bay_zones}} if settles else {})},
                **(dict(coagulation_m3_s=joining) if joining else {}),
            )
        )
    carbon = dict(
        name="exhaust.carbon 3",
        **{"in": "exhaust"},
        at=exit_zone,
        mass_kg=0.3,
        vapours=[
            dict(contaminant="TVOC", eff=0.7, vapour="toluene", kg_per_unit=1e-9, load_kg_kg=0.01),
            dict(contaminant="styrene", eff=0.8, vapour="styrene", kg_per_unit=1e-9, load_kg_kg=0.01),
        ],
    )

    return dict(
        version=1,
        duration_s=86400,
        density=dict(model="ideal_gas"),
        fan_density_scaling=True,
        constants=dict(g_m_s2=G, p_atm_Pa=ATMOSPHERE, R_J_kgK=R_AIR, cp_J_kgK=CP, rho_ref_kg_m3=RHO, sigma_W_m2K4=SIGMA),
        zones=zones,
        nodes=nodes,
        conductances=conductances,
        walls=walls,
        convections=convections,
        radiation=radiation,
        radiant_stars=stars,
        heat_sources=sources,
        paths=paths,
        exchanges=exchanges,
        air_change=[dict(zone="room", **{"with": "outdoors"}, per_s=0)],
        machines=machines,
        schedule=schedule,
        sensors=sensors,
        thermostats=thermostats,
        contaminants=contaminants,
        recirculation=recirculation,
        carbon_beds=[carbon],
    )


class Plain(yaml.SafeDumper):
    def ignore_aliases(self, data):
        return True


# YAML 1.1 wants a dot in floats with an exponent; without it they would read back as text.
Plain.add_representer(float, lambda d, x: d.represent_scalar("tag:yaml.org,2002:float", (lambda s: s if "." in s or "e" not in s else s.replace("e", ".0e"))(repr(x))))


def text(parts, title):
    lines = [f"# {title}, written out by by_hand.py from the drawing; do not edit.", f'title: "{title}"']
    flow = lambda value: yaml.dump(value, Dumper=Plain, default_flow_style=True, width=10**6, sort_keys=False, allow_unicode=True).strip().removesuffix("...").strip()
    for key, value in parts.items():
        if isinstance(value, list):
            lines.append(f"{key}:")
            lines += [f"  - {flow(item)}" for item in value]
        else:
            lines.append(f"{key}: {flow(value)}")
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    for two_zones in (False, True):
        for held in (False, True):
            name = ("two-zones" if two_zones else "one-zone") + ("-held" if held else "")
            title = f"Reference cabinet, {'low and high air' if two_zones else 'one air in each bay'}, {'held' if held else 'free'} room"
            (HERE / f"{name}.network.yaml").write_text(text(network(two_zones, held), title), encoding="utf-8")
            print(name, file=sys.stderr)
