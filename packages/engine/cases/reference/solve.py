#!/usr/bin/python3
"""Solves network cases a second way, with SciPy's integrators, and writes their expected answers.

    python3 solve.py ../network/CASE.yaml ...           writes ../network/CASE.expected.json
    python3 solve.py --check ../network/CASE.yaml ...   compares with what stands there

A case lists what it asks under `_ask`, or CASE.ask.yaml beside this program does: answer ids, each with a unit and the relative or absolute band that a program is
given. Where a closed form exists (closed_forms.py) it is the value and the integration is the second value; else the
value is Radau's and the second value that of another integrator. The difference of the two is the uncertainty.

Integration: solve_ivp at rtol 1e-10, stopped and restarted at every window, schedule and asked time, with thermostat and
bed events located by the integrator. Energies, means and run times are integrated as states beside the others.
"""

import json
import math
import sys
from pathlib import Path

import numpy as np
import yaml
from scipy.integrate import solve_ivp
from scipy.optimize import minimize_scalar

import closed_forms
from laws import KELVIN, Constants, all_crossings, as_list, number, path_flow, profile_at, solve_pressures


class Plant:
    """One case, its states in a fixed order, and the rates of all of them."""

    def __init__(self, case):
        self.case = case
        self.constants = Constants(case.get("constants") or {})
        self.zones = case["zones"]
        self.zone = {z["name"]: z for z in self.zones}
        for z in self.zones:
            z.setdefault("pressure", "fixed" if z["T"] == "fixed" else "solved")
        self.paths = [p for p in case.get("paths", []) if not (p["type"] == "orifice" and number(p["area_m2"]) == 0)]
        self.machines = {m["name"]: m for m in case.get("machines", [])}
        self.thermostats = case.get("thermostats", [])
        self.sensors = {s["name"]: s for s in case.get("sensors", [])}
        self.contaminants = case.get("contaminants", [])
        start = case.get("T0_C")
        self.T_names, self.T_start, self.capacity = [], [], {}

        def add(name, T0, capacity):
            self.T_names.append(name)
            self.T_start.append(number(T0 if T0 is not None else start))
            self.capacity[name] = capacity

        for z in self.zones:
            if z["T"] == "free":
                add(z["name"], z.get("T0_C"), number(z["heat_capacity_J_K"]))
        for n in case.get("nodes", []):
            add(n["name"], n.get("T0_C"), number(n["C_J_K"]))
        self.links = [(c["a"], c["b"], number(c["W_K"])) for c in case.get("conductances", [])]
        for w in case.get("walls", []):
            self.add_wall(w, add)
        self.lagged = [s for s in self.sensors.values() if number(s["lag_s"]) > 0]
        self.C_keys = [(c["name"], z["name"]) for c in self.contaminants for z in self.zones if z.get("conc") == "free"]
        self.C_scale = [number(c.get("scale", 1)) for c in self.contaminants for z in self.zones if z.get("conc") == "free"]
        self.sums = (
            [("bed", m) for m in self.machines]
            + [("machine", m) for m in self.machines]
            + [("source", s.get("name", "")) for s in case.get("heat_sources", [])]
            + [("mean", key) for key in self.C_keys]
            + [("run", t["name"]) for t in self.thermostats]
        )
        self.last_pressures = {}

    def add_wall(self, w, add):
        area = number(w["area_m2"])
        slices = []
        for layer in w["layers"]:
            nodes = int(layer.get("nodes", 1))
            d = number(layer["thickness_m"]) / nodes
            capacity = number(layer["rho_kg_m3"]) * number(layer["c_J_kgK"]) * d * area
            slices += [(d / 2 / (number(layer["k_W_mK"]) * area), capacity)] * nodes
        names = [f"{w['name']}.{k + 1}" for k in range(len(slices))]
        for name, (_, capacity) in zip(names, slices):
            add(name, w.get("T0_C"), capacity)
        ends = [w["a"], *names, w["b"]]
        film = [1 / (number(w["h_a_W_m2K"]) * area), 1 / (number(w["h_b_W_m2K"]) * area)]
        halves = [film[0], *[half for half, _ in slices], film[1]]
        for k in range(len(ends) - 1):
            self.links.append((ends[k], ends[k + 1], 1 / (halves[k] + halves[k + 1])))

    # When things are on.

    def mode_of(self, machine, t):
        for entry in self.case.get("schedule", []):
            if entry["machine"] == machine and number(entry["start_s"]) <= t < number(entry["end_s"]):
                return entry["mode"]
        return "idle"

    def is_on(self, when, t, switches):
        if when is None or when == "always":
            return True
        if when == "never":
            return False
        if "windows" in when:
            return any(number(a) <= t < number(b) for a, b in when["windows"])
        if "thermostat" in when:
            return switches[when["thermostat"]]
        if "machine" in when:
            mode = self.mode_of(when["machine"], t)
            return mode in when["modes"] if "modes" in when else mode != "idle"
        if "any_of" in when:
            return any(self.is_on(w, t, switches) for w in when["any_of"])
        if "all_of" in when:
            return all(self.is_on(w, t, switches) for w in when["all_of"])
        return not self.is_on(when["not"], t, switches)

    def breaks(self):
        """Times at which the file itself changes something."""
        times = set()

        def visit(part):
            if isinstance(part, dict):
                for key, value in part.items():
                    if key == "windows":
                        times.update(number(t) for window in value for t in window)
                    elif key in ("start_s", "end_s"):
                        times.add(number(value))
                    elif key == "T_C" and isinstance(value, list):
                        times.update(number(p[0]) for p in value)
                    elif key == "breaks_s":
                        times.update(number(t) for t in value)
                    else:
                        visit(value)
            elif isinstance(part, list):
                for item in part:
                    visit(item)

        visit(self.case)
        return times

    # The state at one moment.

    def temperatures(self, t, y):
        T = {z["name"]: profile_at(z["T_C"], t) for z in self.zones if z["T"] == "fixed"}
        T.update(zip(self.T_names, y))
        return T

    def readings(self, t, y):
        T = self.temperatures(t, y)
        n = len(self.T_names)
        for k, s in enumerate(self.lagged):
            T[s["name"]] = y[n + k]
        for s in self.sensors.values():
            base = T[s["name"]] if s in self.lagged else T[s["at"]]
            T[s["name"]] = base + number(s.get("offset_K", 0))
        return T

    def concentrations(self, y):
        n = len(self.T_names) + len(self.lagged)
        C = {(c["name"], z["name"]): number((c.get("initial") or {}).get(z["name"], 0)) for c in self.contaminants for z in self.zones}
        for k, key in enumerate(self.C_keys):
            C[key] = y[n + k] * self.C_scale[k]
        return C

    def density(self, T):
        model = self.case.get("density") or {"model": "ideal_gas"}
        if model["model"] == "constant":
            return number(model["value"])
        return self.constants.p_atm / (self.constants.R * (T + KELVIN))

    def flows(self, T, t, switches):
        """Node pressures and the flow of every path, kg/s."""
        k = self.constants
        rho = {z["name"]: self.density(T[z["name"]]) for z in self.zones}
        open_paths = [p for p in self.paths if self.is_on(p.get("open"), t, switches)]

        def dp_at(path, pressures):
            a, b = path["from"], path["to"]
            za, zb = number(self.zone[a].get("z_ref_m", 0)), number(self.zone[b].get("z_ref_m", 0))
            return lambda z: (pressures[a] - rho[a] * k.g * (z - za)) - (pressures[b] - rho[b] * k.g * (z - zb))

        def flow_of(path, pressures):
            a, b = path["from"], path["to"]
            on = [self.is_on(fan.get("control"), t, switches) for fan in as_list(path.get("fan"))]
            scale = rho[a] / k.rho_ref if self.case.get("fan_density_scaling") else 1.0
            return path_flow(path, on, scale, dp_at(path, pressures), rho[a], rho[b], k)

        pressures = solve_pressures(self.zones, open_paths, rho, flow_of, k, self.last_pressures)
        self.last_pressures = pressures
        m = {p["name"]: 0.0 for p in self.case.get("paths", [])}
        m.update({p["name"]: flow_of(p, pressures) for p in open_paths})
        differences = {p["name"]: dp_at(p, pressures)(number(p.get("z_m", 0))) for p in self.paths}
        return pressures, m, differences

    def exchange_flow(self, e, T):
        if "m3_s" in e:
            return number(e["m3_s"])
        a, b = T[e["a"]] + KELVIN, T[e["b"]] + KELVIN
        size = number(e["Cd"]) / 3 * number(e["width_m"]) * number(e["height_m"]) ** 1.5
        return size * math.sqrt(self.constants.g * abs(a - b) / ((a + b) / 2))

    def balance(self, t, y, now, switches):
        """Heat into every place without the beds, W; flows; exchange flows. `now` is a moment inside the stretch."""
        k = self.constants
        T = self.temperatures(t, y)
        pressures, m, differences = self.flows(T, now, switches)
        heat = dict.fromkeys(list(T), 0.0)

        def move(a, b, watts):
            heat[a] -= watts
            heat[b] += watts

        for a, b, G in self.links:
            move(a, b, G * (T[a] - T[b]))
        for r in self.case.get("radiation", []):
            factor = number(r["area_m2"]) * number(r.get("emissivity", 1)) * number(r.get("factor", 1))
            move(r["a"], r["b"], factor * k.sigma * ((T[r["a"]] + KELVIN) ** 4 - (T[r["b"]] + KELVIN) ** 4))
        for s in self.case.get("heat_sources", []):
            if self.is_on(s.get("active"), now, switches):
                heat[s["node"]] += number(s["W"])
        for name, machine in self.machines.items():
            mode = (machine.get("modes") or {}).get(self.mode_of(name, now)) or {}
            for p in mode.get("powers") or []:
                heat[p["node"]] += number(p["W"])
        for p in self.paths:
            source, receiver = (p["from"], p["to"]) if m[p["name"]] >= 0 else (p["to"], p["from"])
            heat[receiver] += abs(m[p["name"]]) * k.cp * (T[source] - T[receiver])
        mixing = []
        for e in self.case.get("exchanges", []):
            Q = self.exchange_flow(e, T) if self.is_on(e.get("active"), now, switches) else 0.0
            mixing.append((e["a"], e["b"], Q))
            move(e["a"], e["b"], k.rho_ref * Q * k.cp * (T[e["a"]] - T[e["b"]]))
        changes = []
        for c in as_list(self.case.get("air_change")):
            each = number(self.zone[c["zone"]]["volume_m3"]) * number(c["per_h"]) / 3600
            taken = sum((p["from"] == c["zone"]) * m[p["name"]] - (p["to"] == c["zone"]) * m[p["name"]] for p in self.paths)
            changes.append((c["zone"], c["with"], each, taken / k.rho_ref))
            heat[c["zone"]] += (k.rho_ref * each + max(taken, 0)) * k.cp * (T[c["with"]] - T[c["zone"]])
        return T, heat, pressures, m, differences, mixing, changes

    def bed_power(self, machine, state, heat):
        """W, by the bed's state: 'heating', 'holding', 'off'. A held node's power is its losses."""
        if state == "heating":
            return number(machine["bed"]["P_max_W"])
        return -heat[machine["bed"]["node"]] if state == "holding" else 0.0

    def rates(self, t, y, now, switches, beds):
        k = self.constants
        T, heat, _, m, _, mixing, changes = self.balance(t, y, now, switches)
        powers = {name: self.bed_power(self.machines[name], state, heat) for name, state in beds.items()}
        for name, watts in powers.items():
            heat[self.machines[name]["bed"]["node"]] += watts
        held = {self.machines[name]["bed"]["node"] for name, state in beds.items() if state == "holding"}
        dT = [0.0 if n in held else heat[n] / self.capacity[n] for n in self.T_names]
        n = len(self.T_names)
        dS = [(T[s["at"]] - y[n + i]) / number(s["lag_s"]) for i, s in enumerate(self.lagged)]
        C = self.concentrations(y)
        gain = dict.fromkeys(C, 0.0)
        for c in self.contaminants:
            name = c["name"]
            for p in self.paths:
                flow = m[p["name"]]
                source, receiver = (p["from"], p["to"]) if flow >= 0 else (p["to"], p["from"])
                moved = abs(flow) / k.rho_ref * C[name, source]
                gain[name, source] -= moved
                gain[name, receiver] += moved * (1 - number((p.get("filter_eff") or {}).get(name, 0)))
            for a, b, Q in mixing:
                gain[name, a] -= Q * (C[name, a] - C[name, b])
                gain[name, b] += Q * (C[name, a] - C[name, b])
            for inside, outside, each, taken in changes:
                gain[name, inside] += (each + max(taken, 0)) * C[name, outside] - (each + max(-taken, 0)) * C[name, inside]
            for z, rate in (c.get("deposition_per_h") or {}).items():
                gain[name, z] -= number(rate) / 3600 * number(self.zone[z]["volume_m3"]) * C[name, z]
        for r in as_list(self.case.get("recirculation")):
            if self.is_on(r.get("active"), now, switches):
                for name, share in (r.get("eff") or {}).items():
                    gain[name, r["zone"]] -= number(r["m3_h"]) / 3600 * number(share) * C[name, r["zone"]]
        for e in self.case.get("emissions", []):
            if self.is_on(e.get("active"), now, switches):
                gain[e["contaminant"], e["zone"]] += number(e["rate"])
        machine_powers = {}
        for name, machine in self.machines.items():
            mode = (machine.get("modes") or {}).get(self.mode_of(name, now)) or {}
            machine_powers[name] = powers.get(name, 0.0) + sum(number(p["W"]) for p in mode.get("powers") or [])
            for e in mode.get("emission") or []:
                gain[e["contaminant"], e["zone"]] += number(e["rate"])
        dC = [gain[key] / number(self.zone[key[1]]["volume_m3"]) / s for key, s in zip(self.C_keys, self.C_scale)]
        sums = []
        sources = {s.get("name", ""): s for s in self.case.get("heat_sources", [])}
        for kind, key in self.sums:
            if kind == "bed":
                sums.append(powers.get(key, 0.0) / 1e3)
            elif kind == "machine":
                sums.append(machine_powers[key] / 1e3)
            elif kind == "source":
                s = sources[key]
                sums.append(number(s["W"]) / 1e3 if self.is_on(s.get("active"), now, switches) else 0.0)
            elif kind == "mean":
                sums.append(C[key] / self.C_scale[self.C_keys.index(key)])
            else:
                sums.append(1.0 if switches[key] else 0.0)
        return np.array([*dT, *dS, *dC, *sums])


class Run:
    """What the integration leaves behind."""

    def __init__(self):
        self.rows = {}
        self.events = []
        self.peaks = {}


def simulate(plant, asked, method):
    case = plant.case
    end = number(case["duration_s"])
    y = np.array(
        plant.T_start
        + [plant.temperatures(0, plant.T_start)[s["at"]] for s in plant.lagged]
        + [number((c.get("initial") or {}).get(z["name"], 0)) / number(c.get("scale", 1)) for c in plant.contaminants for z in plant.zones if z.get("conc") == "free"]
        + [0.0] * len(plant.sums)
    )
    switches = {t["name"]: t.get("initial") in (True, "on") for t in plant.thermostats}
    beds, targets = {}, {}
    run = Run()
    stops = sorted({0.0, end, *[t for t in plant.breaks() | set(asked) if 0 <= t <= end]})

    def set_of(name, now):
        mode = (plant.machines[name].get("modes") or {}).get(plant.mode_of(name, now)) or {}
        target = mode.get("bed_set_C")
        return None if target is None else number(target)

    def set_beds(t, now, note):
        for name, machine in plant.machines.items():
            if "bed" not in machine:
                continue
            target = set_of(name, now)
            if name in targets and targets[name] == target:
                continue
            targets[name] = target
            T = plant.temperatures(t, y)[machine["bed"]["node"]]
            beds[name] = "off" if target is None or T > target + 1e-9 else "heating" if T < target - 1e-9 else "holding"

    def settle(t, now):
        """Thermostats that stand beyond their levels switch at once."""
        readings = plant.readings(t, y)
        for s in plant.thermostats:
            value = readings[s["sensor"]]
            wanted = True if value >= number(s["on_above_C"]) else False if value <= number(s["off_below_C"]) else switches[s["name"]]
            if wanted != switches[s["name"]]:
                switches[s["name"]] = wanted
                run.events.append((t, s["name"], "on" if wanted else "off"))

    t = 0.0
    for stop_from, stop_to in zip(stops, [*stops[1:], None]):
        t = stop_from
        now = stop_from if stop_to is None else (stop_from + stop_to) / 2
        settle(t, now)
        set_beds(t, now, True)
        run.rows[stop_from] = snapshot(plant, t, y, now, dict(switches), dict(beds))
        if stop_to is None:
            break
        while t < stop_to - 1e-12:
            watch, what = [], []

            def event(function, label):
                function.terminal = True
                function.direction = 1
                watch.append(function)
                what.append(label)

            for s in plant.thermostats:
                if switches[s["name"]]:
                    event(lambda u, v, s=s: number(s["off_below_C"]) - plant.readings(u, v)[s["sensor"]], ("switch", s["name"], False))
                else:
                    event(lambda u, v, s=s: plant.readings(u, v)[s["sensor"]] - number(s["on_above_C"]), ("switch", s["name"], True))
            for name, state in beds.items():
                machine, target = plant.machines[name], targets[name]
                node = machine["bed"]["node"]
                if target is None:
                    continue
                if state == "heating":
                    event(lambda u, v, node=node, target=target: plant.temperatures(u, v)[node] - target, ("bed", name, "holding"))
                elif state == "off":
                    event(lambda u, v, node=node, target=target: target - plant.temperatures(u, v)[node], ("bed", name, "holding"))
                else:
                    need = lambda u, v, node=node: -plant.balance(u, v, now, switches)[1][node]
                    event(lambda u, v, need=need, P=number(machine["bed"]["P_max_W"]): need(u, v) - P, ("bed", name, "heating"))
                    event(lambda u, v, need=need: -need(u, v), ("bed", name, "off"))
            solution = solve_ivp(
                lambda u, v: plant.rates(u, v, now, switches, beds),
                (t, stop_to),
                y,
                method=method,
                rtol=number(case.get("_rtol", 1e-10)),
                atol=number(case.get("_rtol", 1e-10)) / 10,
                events=watch,
                dense_output=True,
                max_step=max((stop_to - t) / 8, 1e-3),
            )
            if solution.status < 0:
                raise RuntimeError(solution.message)
            note_peaks(plant, run, solution)
            t, y = float(solution.t[-1]), solution.y[:, -1].copy()
            if solution.status == 1:
                for label, times in zip(what, solution.t_events):
                    if len(times) and abs(times[-1] - t) <= 1e-9 * max(1.0, t):
                        apply(plant, run, label, t, y, switches, beds, targets)
    return run


def apply(plant, run, label, t, y, switches, beds, targets):
    kind, name, to = label
    if kind == "switch":
        switches[name] = to
        run.events.append((t, name, "on" if to else "off"))
        return
    beds[name] = to
    run.events.append((t, name, to))
    if to == "holding":
        y[plant.T_names.index(plant.machines[name]["bed"]["node"])] = targets[name]


def note_peaks(plant, run, solution):
    """Highest temperature of every free place, looked for between the steps too."""
    times = np.unique(np.concatenate([np.linspace(a, b, 9) for a, b in zip(solution.t[:-1], solution.t[1:])]))
    states = solution.sol(times)
    for k, name in enumerate(plant.T_names):
        best = int(np.argmax(states[k]))
        low, high = times[max(best - 1, 0)], times[min(best + 1, len(times) - 1)]
        candidates = [(float(states[k][best]), float(times[best])), (float(solution.y[k][-1]), float(solution.t[-1]))]
        if high > low and 0 < best < len(times) - 1:
            found = minimize_scalar(lambda u: -solution.sol(u)[k], bounds=(low, high), method="bounded", options={"xatol": 1e-8})
            candidates.append((float(-found.fun), float(found.x)))
        value, at = max(candidates)
        if name not in run.peaks or value > run.peaks[name][0]:
            run.peaks[name] = (value, at)


def snapshot(plant, t, y, now, switches, beds):
    T, heat, pressures, m, differences, mixing, _ = plant.balance(t, y, now, switches)
    sums = y[len(y) - len(plant.sums) :] if plant.sums else []
    return {
        "T": plant.readings(t, y) | T,
        "C": plant.concentrations(y),
        "p": pressures,
        "flow": m,
        "dp": differences,
        "mixing": mixing,
        "bed": {name: plant.bed_power(plant.machines[name], state, heat) for name, state in beds.items()},
        "sum": dict(zip(plant.sums, sums)),
        "rho": {z["name"]: plant.density(T[z["name"]]) for z in plant.zones},
    }


def answer(plant, run, ask):
    """One number by its id; README.md lists the forms."""
    stem, _, at = ask.partition("@")
    end = number(plant.case.get("duration_s", 0))
    row = run.rows[number(at.rstrip("s")) if at else end]
    kind, _, rest = stem.partition("_")
    if kind == "T":
        return row["T"][rest]
    if kind == "p":
        return row["p"][rest]
    if kind == "flow":
        return row["flow"][rest]
    if kind == "dp":
        return row["dp"][rest]
    if kind == "bedpower":
        return row["bed"][rest]
    if kind == "part":
        path_name, part = rest.split("/")
        return part_pressure(plant, row, path_name, part)
    if kind == "energy":
        of, _, name = rest.partition("_")
        return row["sum"][of, name] * 1e3
    if kind == "mean":
        contaminant, _, zone = rest.partition("_")
        scale = plant.C_scale[plant.C_keys.index((contaminant, zone))]
        return row["sum"]["mean", (contaminant, zone)] * scale / end
    if kind == "runtime":
        return row["sum"]["run", rest]
    if kind == "peak":
        return run.peaks[rest][0]
    if kind == "peaktime":
        return run.peaks[rest][1]
    if kind == "switch":
        switching = [e for e in run.events if e[2] in ("on", "off") and e[1] not in plant.machines]
        return len(switching) if rest == "count" else switching[int(rest) - 1][0]
    if kind == "holding":
        name, _, index = rest.rpartition("_")
        return [e for e in run.events if e[1] == name and e[2] == "holding"][int(index) - 1][0]
    return row["C"][kind, rest]


def part_pressure(plant, row, path_name, part):
    path = next(p for p in plant.paths if p["name"] == path_name)
    m = row["flow"][path_name]
    rho = row["rho"][path["from"] if m >= 0 else path["to"]]
    Q = m / rho
    for f in as_list(path.get("filter")):
        if f.get("name", "filter") == part:
            return number(f.get("a", 0)) * Q + number(f.get("b", 0)) * Q * abs(Q)
    for r in as_list(path.get("resistance")):
        if part == "a_lin":
            return number(r["a_lin"]) * Q
        if part == "b_quad":
            return number(r["b_quad"]) * Q * abs(Q)
        for k in as_list(r.get("K")):
            if k.get("name") == part:
                return number(k["K"]) / (2 * number(k["area_m2"]) ** 2) * rho * Q * abs(Q)
    raise KeyError(part)


def network_only(plant):
    """The flows at the given temperatures, as one row."""
    run = Run()
    T = plant.temperatures(0, plant.T_start)
    switches = {t["name"]: t.get("initial") in (True, "on") for t in plant.thermostats}
    pressures, m, differences = plant.flows(T, 0.0, switches)
    rho = {z["name"]: plant.density(T[z["name"]]) for z in plant.zones}
    run.rows[number(plant.case.get("duration_s", 0))] = {"T": T, "C": {}, "p": pressures, "flow": m, "dp": differences, "bed": {}, "sum": {}, "rho": rho}
    return run


def operating_points(plant):
    answers = {}
    for path in plant.paths:
        if path["type"] != "fan_path":
            continue
        T = plant.temperatures(0, plant.T_start)
        a, b = path["from"], path["to"]
        rho = {n: plant.density(T[n]) for n in (a, b)}
        z = number(path.get("z_m", 0))
        at = lambda n: number(plant.zone[n].get("p_ref_Pa", 0)) - rho[n] * plant.constants.g * (z - number(plant.zone[n].get("z_ref_m", 0)))
        scale = rho[a] / plant.constants.rho_ref if plant.case.get("fan_density_scaling") else 1.0
        on = [True] * len(as_list(path.get("fan")))
        crossings = all_crossings(path, on, scale, at(a) - at(b), rho[a], rho[b])
        answers["count"] = len(crossings)
        for k, (Q, falling) in enumerate(crossings):
            answers[f"Q_{k + 1}_{'stable' if falling else 'unstable'}"] = Q * 3600
    return answers


def with_value(case, sweep, value):
    import copy

    changed = copy.deepcopy(case)
    for part in changed["paths"]:
        if part["name"] == sweep["path"]:
            part[sweep["key"]] = value
    return changed


def answers_of(case, asks, method):
    """Numbers by id; `id#2` is the second value of a sweep."""
    if "sweep" in case:
        found = {}
        for k, value in enumerate(case["sweep"]["values"]):
            own = [a.rpartition("#")[0] for a in asks if a.endswith(f"#{k + 1}")]
            inner = answers_of({key: v for key, v in with_value(case, case["sweep"], value).items() if key != "sweep"}, own, method)
            found.update({f"{a}#{k + 1}": v for a, v in inner.items()})
        return found
    plant = Plant(case)
    analysis = case.get("analysis", "transient")
    if analysis == "operating_points":
        return {a: value for a, value in operating_points(plant).items() if a in asks}
    if analysis == "network":
        run = network_only(plant)
    else:
        asked = [number(a.partition("@")[2].rstrip("s")) for a in asks if "@" in a]
        run = simulate(plant, asked, method)
    return {a: answer(plant, run, a) for a in asks}


def solve(path):
    case = yaml.safe_load(path.read_text())
    beside = Path(__file__).with_name(path.stem + ".ask.yaml")
    if beside.exists():
        case.update(yaml.safe_load(beside.read_text()))
    asks = case["_ask"]
    ids = [a["id"] for a in asks]
    first = answers_of(case, ids, "Radau")
    transient = case.get("analysis", "transient") == "transient"
    second = answers_of(case, ids, case.get("_second", "LSODA")) if transient else first
    closed = closed_forms.of(case)
    answers = []
    for ask in asks:
        name = ask["id"]
        value, method = first[name], "SciPy: solve_ivp Radau" if transient else "SciPy: brentq and Newton"
        other, how = second[name], case.get("_second", "LSODA")
        if name in closed:
            value, method = closed[name], closed_forms.method_of(case)
            other, how = first[name], "SciPy"
        same = not transient and name not in closed
        difference = None if same else abs(value - other)
        least = 1e-12 * abs(value)
        uncertainty = max(least, difference or 0.0)
        tolerance = number(ask["tolerance"]) if "tolerance" in ask else abs(value) * number(ask["relative"])
        if uncertainty > tolerance / 4:
            raise RuntimeError(f"{path.name} {name}: {value} and {other} ({how}) differ too much for the band {tolerance}")
        answers.append(
            {
                "id": name,
                "value": tidy(value),
                "unit": ask["unit"],
                "method": method,
                "second_value": None if same else tidy(other),
                "difference": None if difference is None else tidy(difference, 3),
                "ref_uncertainty": tidy(uncertainty, 3),
                "tolerance_for_tool": tidy(tolerance, 3),
            }
        )
    missing = set(closed) - set(ids)
    if missing:
        raise RuntimeError(f"closed forms that nobody asks for: {missing}")
    expected = {"id": case["id"], "title": case["title"], "answers": answers, "notes": case.get("_notes", [])}
    target = path.with_name(path.name.replace(".yaml", ".expected.json"))
    target.write_text(json.dumps(expected, indent=2, ensure_ascii=False) + "\n")
    print(f"{case['id']}: {len(answers)} answers")


def tidy(value, digits=10):
    return value if isinstance(value, int) else float(f"{value:.{digits}g}")


# Ids of answers that other cases name in their own way.
OTHER_NAMES = {"time_reach_105C": "holding_E_1", "time_down_to_65C": "holding_E_2", "energy_bed": "energy_bed_E"}


def check(path):
    """Recomputes what stands in an expected file; a value must agree within a tenth of its band."""
    case = yaml.safe_load(path.read_text())
    expected = json.loads(path.with_name(path.name.replace(".yaml", ".expected.json")).read_text())
    compared = 0
    for a in expected["answers"]:
        ask = OTHER_NAMES.get(a["id"], a["id"])
        try:
            value = answers_of(case, [ask], "Radau")[ask]
        except (KeyError, ValueError, IndexError):
            print(f"{case['id']}: {a['id']} is not among the forms of this program")
            continue
        compared += 1
        if abs(value - a["value"]) > a["tolerance_for_tool"] / 10:
            print(f"{case['id']}: {a['id']} is {value}, stored {a['value']}")
    print(f"{case['id']}: {compared} of {len(expected['answers'])} answers compared")


if __name__ == "__main__":
    checking = sys.argv[1:2] == ["--check"]
    for argument in sys.argv[1 + checking :]:
        (check if checking else solve)(Path(argument))
