"""A frozen day with SciPy's solve_ivp: a second general-purpose peer, written from the laws alone.

It reads the bare network file itself (YAML), so that it shares no line with the engine's reader. The right side is as quick
as NumPy and plain Python allow: conduction is one matrix product, the few air paths are plain floats, pressures are solved by
Newton's method from the last answer. Every implicit method gets the analytic Jacobian, flows' dependence on temperature included.

usage: frozen_day.py FILE ATOL_K METHOD [jacobian=full|difference] [repeat=N] [samples=FILE] [every=S]
METHOD: BDF, Radau or LSODA. Prints one line of JSON. All numbers SI, temperatures in K.
"""

import json
import math
import sys
import time

import numpy as np
import yaml
from scipy.integrate import solve_ivp

ICE = 273.15


class Plant:
    """The network's numbers in arrays, and what is on at the moment."""

    def __init__(self, file):
        with open(file, encoding="utf8") as opened:
            f = yaml.safe_load(opened)
        self.duration = f["duration_s"]
        self.gravity, self.gas, self.atmosphere = 9.80665, 287.055, 101325.0
        self.cp, self.rho_ref, sigma = 1006.0, 1.2, 5.670374419e-8
        if f["density"]["model"] != "ideal_gas":
            raise SystemExit("only the ideal gas is known here")
        self.scaling = f.get("fan_density_scaling", False)
        common = f.get("T0_C")

        free, self.fixed = [], []
        for zone in f["zones"]:
            if zone["T"] == "free":
                free.append((zone["name"], zone["heat_capacity_J_K"], zone.get("T0_C", common)))
            else:
                self.fixed.append((zone["name"], zone["T_C"]))
        for node in f.get("nodes", []):
            free.append((node["name"], node["C_J_K"], node.get("T0_C", common)))
        links = [(c["a"], c["b"], c["W_K"]) for c in f.get("conductances", [])]
        for wall in f.get("walls", []):
            area, before, resistance = wall["area_m2"], wall["a"], 1.0 / (wall["h_a_W_m2K"] * wall["area_m2"])
            number = 0
            for layer in wall["layers"]:
                thickness = layer["thickness_m"] / layer["nodes"]
                half = thickness / 2.0 / (layer["k_W_mK"] * area)
                for _ in range(layer["nodes"]):
                    number += 1
                    name = f"{wall['name']}.{number}"
                    capacity = layer["rho_kg_m3"] * layer["c_J_kgK"] * thickness * area
                    free.append((name, capacity, wall.get("T0_C", common)))
                    links.append((before, name, 1.0 / (resistance + half)))
                    before, resistance = name, half
            links.append((before, wall["b"], 1.0 / (resistance + 1.0 / (wall["h_b_W_m2K"] * area))))
        names = [name for name, _, _ in free] + [name for name, _ in self.fixed]
        self.place = {name: index for index, name in enumerate(names)}
        self.n = len(free)
        self.capacity = np.array([capacity for _, capacity, _ in free])
        self.start = np.array([t0 + ICE for _, _, t0 in free])
        self.held = np.array([t + ICE for _, t in self.fixed])
        total = len(names)
        conduction = np.zeros((total, total))
        for a, b, g in links:
            i, j = self.place[a], self.place[b]
            conduction[i, i] -= g
            conduction[i, j] += g
            conduction[j, j] -= g
            conduction[j, i] += g
        radiation = np.zeros((total, total))
        for r in f.get("radiation", []):
            i, j = self.place[r["a"]], self.place[r["b"]]
            g = r["area_m2"] * r["emissivity"] * r["factor"] * sigma
            radiation[i, i] -= g
            radiation[i, j] += g
            radiation[j, j] -= g
            radiation[j, i] += g
        n = self.n
        self.conduction, self.radiation = conduction[:n, :n].copy(), radiation[:n, :n].copy()
        self.constant = conduction[:n, n:] @ self.held + radiation[:n, n:] @ self.held**4

        self.zones = f["zones"]
        self.zone_place = [self.place[z["name"]] for z in self.zones]
        at = {z["name"]: i for i, z in enumerate(self.zones)}
        solved = [i for i, z in enumerate(self.zones) if z["pressure"] == "solved"]
        self.unknown = [solved.index(i) if i in solved else -1 for i in range(len(self.zones))]
        self.unknowns = len(solved)
        self.z_ref = [z.get("z_ref_m", 0.0) for z in self.zones]
        self.p_fixed = [z.get("p_ref_Pa", 0.0) for z in self.zones]
        self.paths = []
        for p in f.get("paths", []):
            path = {"type": p["type"], "from": at[p["from"]], "to": at[p["to"]], "z": p["z_m"], "when": p.get("open", "always")}
            if p["type"] == "orifice":
                path["factor"] = p.get("count", 1) * p["Cd"] * p["area_m2"] * math.sqrt(2.0)
                path["linear"] = p["dp_lin_Pa"]
            elif p["type"] == "crack":
                path.update(factor=p["c"], n=p["n"], linear=p["dp_lin_Pa"])
            elif p["type"] == "fan_path":
                fan, resistance, fil = p["fan"], p.get("resistance", {}), p.get("filter", {"a": 0.0, "b": 0.0})
                k = lambda parts: sum(part["K"] / (2.0 * part["area_m2"] ** 2) for part in parts)
                path.update(fan["curve"]["poly"])
                path["fan_a"], path["fan_b"] = path.pop("a"), path.pop("b")
                path["a"] = fil["a"] + resistance.get("a_lin", 0.0)
                path["b"] = fil["b"] + resistance.get("b_quad", 0.0)
                path["k"] = k(resistance.get("K", []))
                stopped = fan.get("stopped", {})
                path["stopped_k"] = k(stopped.get("K", []))
                path["control"] = fan["control"]
            else:
                raise SystemExit(f"a path of type {p['type']} is not known here")
            self.paths.append(path)
        self.exchanges = []
        for e in f.get("exchanges", []):
            if e.get("law") != "vertical_opening":
                raise SystemExit("only exchanges of vertical openings are known here")
            factor = self.rho_ref * self.cp * e["Cd"] / 3.0 * e["width_m"] * e["height_m"] ** 1.5 * math.sqrt(self.gravity)
            self.exchanges.append({"a": self.place[e["a"]], "b": self.place[e["b"]], "factor": factor, "when": e["active"]})
        self.machines = f.get("machines", [])
        self.schedule = f.get("schedule", [])
        self.thermostats = [
            {
                "name": t["name"],
                "place": self.place[t["sensor"]],
                "on_at": t["on_above_C"] + ICE,
                "off_at": t["off_below_C"] + ICE,
                "initial": t.get("initial", "off") in ("on", True),
            }
            for t in f.get("thermostats", [])
        ]
        self.breaks = self.all_breaks()

    def all_breaks(self):
        times = {self.duration}
        for entry in self.schedule:
            times.update((entry["start_s"], entry["end_s"]))
        for when in [p["when"] for p in self.paths] + [e["when"] for e in self.exchanges]:
            if isinstance(when, dict) and "windows" in when:
                times.update(edge for window in when["windows"] for edge in window)
        return sorted(t for t in times if 0.0 < t <= self.duration)

    # ------------------------------------------------------------- switching

    def begin(self):
        self.pressures = [0.0] * self.unknowns
        self.on = {t["name"]: t["initial"] for t in self.thermostats}
        self.bed_state = ["off"] * len(self.machines)
        self.mode = ["idle"] * len(self.machines)
        self.work = {"rightSides": 0, "jacobians": 0, "steps": 0, "events": 0}

    def holds(self, when, now):
        if when == "always":
            return True
        if "windows" in when:
            return any(start <= now < end for start, end in when["windows"])
        if "thermostat" in when:
            return self.on[when["thermostat"]]
        raise SystemExit("a condition that is not known here")

    def bed(self, i):
        return self.place[self.machines[i]["bed"]["node"]]

    def bed_set(self, i):
        value = self.machines[i]["modes"].get(self.mode[i], {}).get("bed_set_C")
        return None if value is None else value + ICE

    def bed_most(self, i):
        return self.machines[i]["bed"]["P_max_W"]

    def set_modes(self, now, y):
        for i, machine in enumerate(self.machines):
            running = [e["mode"] for e in self.schedule if e["machine"] == machine["name"] and e["start_s"] <= now < e["end_s"]]
            self.mode[i] = running[-1] if running else "idle"
            level = self.bed_set(i)
            if level is None:
                self.bed_state[i] = "off"
            elif not (self.bed_state[i] == "holding" and abs(y[self.bed(i)] - level) < 1e-9):
                self.bed_state[i] = "heating" if y[self.bed(i)] < level else "coasting"

    def settle(self, now):
        """Everything that is constant until the next switch."""
        for path in self.paths:
            path["open"] = self.holds(path["when"], now)
            if path["type"] == "fan_path":
                path["on"] = self.holds(path["control"], now)
        self.mixing = [e for e in self.exchanges if self.holds(e["when"], now)]
        self.source = self.constant.copy()
        self.holding = []
        for i, machine in enumerate(self.machines):
            for power in machine["modes"].get(self.mode[i], {}).get("powers", []):
                self.source[self.place[power["node"]]] += power["W"]
            if self.bed_state[i] == "heating":
                self.source[self.bed(i)] += self.bed_most(i)
            if self.bed_state[i] == "holding":
                self.holding.append(self.bed(i))

    def holding_power(self, i, y):
        """Power that keeps the bed where it is, given what it loses (its own power is not among the sources while it holds)."""
        row = self.bed(i)
        own = self.bed_most(i) if self.bed_state[i] == "heating" else 0.0
        return -(self.conduction[row] @ y + self.radiation[row] @ y**4 + self.source[row] - own)

    # ------------------------------------------------------------- air

    def flow(self, path, dp, rho_from, rho_to):
        """Flow, and its slopes with pressure, with the upstream density and with the fan's scale; whether air comes from `from`."""
        if path["type"] == "fan_path":
            scale, by_scale = 1.0, 0.0
            if path["on"]:
                if self.scaling:
                    scale = rho_from / self.rho_ref
                drive, a, k = dp + scale * path["p0"], path["a"] + scale * path["fan_a"], path["k"]
                b = path["b"] + scale * path["fan_b"]
            else:
                drive, a, k, b = dp, path["a"], path["k"] + path["stopped_k"], path["b"]
            forward = drive >= 0.0
            rho = rho_from if forward else rho_to
            root = math.sqrt(a * a + 4.0 * (b + k * rho) * abs(drive))
            q = 2.0 * drive / (a + root)
            if path["on"] and self.scaling:
                by_scale = rho * (path["p0"] - path["fan_a"] * q - path["fan_b"] * q * abs(q)) / root
            return rho * q, rho / root, q - rho * k * q * abs(q) / root, by_scale, forward
        forward = dp >= 0.0
        rho = rho_from if forward else rho_to
        square = dp * dp + path["linear"] ** 2
        if path["type"] == "orifice":
            part = path["factor"] * math.sqrt(rho) / math.sqrt(math.sqrt(square))
            return part * dp, part * (1.0 - 0.5 * dp * dp / square), 0.5 * part * dp / rho, 0.0, forward
        part = path["factor"] * square ** (0.5 * (path["n"] - 1.0))
        return rho * part * dp, rho * part * (1.0 + (path["n"] - 1.0) * dp * dp / square), part * dp, 0.0, forward

    def balance(self, p, rho, paths):
        """Net flow out of each solved zone and its slopes with the pressures; the two by two case is all that is needed here."""
        u, g, unknown = self.unknowns, self.gravity, self.unknown
        out, slopes, flows = [0.0] * u, [[0.0] * u for _ in range(u)], []
        for path in paths:
            i, j, z = path["from"], path["to"], path["z"]
            a, b = unknown[i], unknown[j]
            dp = (self.p_fixed[i] if a < 0 else p[a]) - rho[i] * g * (z - self.z_ref[i])
            dp -= (self.p_fixed[j] if b < 0 else p[b]) - rho[j] * g * (z - self.z_ref[j])
            answer = self.flow(path, dp, rho[i], rho[j])
            flows.append(answer)
            m, slope = answer[0], answer[1]
            if a >= 0:
                out[a] += m
                slopes[a][a] += slope
            if b >= 0:
                out[b] -= m
                slopes[b][b] += slope
            if a >= 0 and b >= 0:
                slopes[a][b] -= slope
                slopes[b][a] -= slope
        return out, slopes, flows

    def solve_air(self, y):
        t = [y[place] if place < self.n else self.held[place - self.n] for place in self.zone_place]
        rho = [self.atmosphere / (self.gas * x) for x in t]
        paths = [path for path in self.paths if path["open"]]
        p = self.pressures
        out, slopes, flows = self.balance(p, rho, paths)
        for _ in range(100):
            if max(map(abs, out)) <= self.air_tolerance * max(1e-6, max(abs(flow[0]) for flow in flows)):
                break
            step = solve_small(slopes, out)
            before = sum(s * o for s, o in zip(step, out))
            length = 1.0
            for _ in range(40):
                trial = [x - length * s for x, s in zip(p, step)]
                out, slopes, flows = self.balance(trial, rho, paths)
                if abs(sum(s * o for s, o in zip(step, out))) <= 0.9 * abs(before):
                    break
                length *= 0.5
            p = trial
        self.pressures = p
        return t, rho, paths, slopes, flows

    # ------------------------------------------------------------- heat

    def right_side(self, _now, y):
        self.work["rightSides"] += 1
        q = self.conduction @ y + self.radiation @ (y * y) ** 2 + self.source
        t, _, paths, _, flows = self.solve_air(y)
        n, cp = self.n, self.cp
        for path, flow in zip(paths, flows):
            m = flow[0]
            into, source = (path["to"], path["from"]) if m > 0.0 else (path["from"], path["to"])
            row = self.zone_place[into]
            if row < n:
                q[row] += abs(m) * cp * (t[source] - t[into])
        for e in self.mixing:
            ta, tb = self.temperature(e["a"], y), self.temperature(e["b"], y)
            heat = e["factor"] * math.sqrt(abs(ta - tb) / (0.5 * (ta + tb))) * (ta - tb)
            if e["a"] < n:
                q[e["a"]] -= heat
            if e["b"] < n:
                q[e["b"]] += heat
        q /= self.capacity
        for row in self.holding:
            q[row] = 0.0
        return q

    def temperature(self, place, y):
        return y[place] if place < self.n else self.held[place - self.n]

    def jacobian(self, _now, y):
        self.work["jacobians"] += 1
        n, cp, unknown = self.n, self.cp, self.unknown
        j = self.conduction + 4.0 * self.radiation * (y * y * y)
        for e in self.mixing:
            ta, tb = self.temperature(e["a"], y), self.temperature(e["b"], y)
            difference, mean = ta - tb, 0.5 * (ta + tb)
            root = e["factor"] * math.sqrt(abs(difference) / mean)
            by_a, by_b = root * (1.5 - 0.25 * difference / mean), root * (-1.5 - 0.25 * difference / mean)
            for row, sign in ((e["a"], -1.0), (e["b"], 1.0)):
                for column, by in ((e["a"], by_a), (e["b"], by_b)):
                    if row < n and column < n:
                        j[row, column] += sign * by
        t, rho, paths, slopes, flows = self.solve_air(y)
        zones = range(len(t))
        response = [[0.0] * self.unknowns for _ in zones]
        direct = []
        for path, (_, by_dp, by_rho, by_scale, forward) in zip(paths, flows):
            a, b, z = path["from"], path["to"], path["z"]
            head = by_dp * self.gravity
            by_from = -head * (z - self.z_ref[a]) + (by_rho if forward else 0.0) + by_scale / self.rho_ref
            by_to = head * (z - self.z_ref[b]) + (0.0 if forward else by_rho)
            by_from, by_to = -by_from * rho[a] / t[a], -by_to * rho[b] / t[b]
            direct.append((by_from, by_to))
            for zone, sign in ((a, 1.0), (b, -1.0)):
                if unknown[zone] >= 0:
                    response[a][unknown[zone]] += sign * by_from
                    response[b][unknown[zone]] += sign * by_to
        lower = [solve_small(slopes, r) for r in response]  # minus what each pressure does when a zone warms
        for path, flow, (by_from, by_to) in zip(paths, flows, direct):
            m, a, b = flow[0], path["from"], path["to"]
            into, source = (b, a) if m > 0.0 else (a, b)
            row = self.zone_place[into]
            if m == 0.0 or row >= n:
                continue
            j[row, row] -= abs(m) * cp
            if self.zone_place[source] < n:
                j[row, self.zone_place[source]] += abs(m) * cp
            lift = cp * (t[source] - t[into]) * math.copysign(1.0, m)
            for zone in zones:
                if self.zone_place[zone] >= n:
                    continue
                by = (by_from if zone == a else 0.0) + (by_to if zone == b else 0.0)
                if unknown[a] >= 0:
                    by -= flow[1] * lower[zone][unknown[a]]
                if unknown[b] >= 0:
                    by += flow[1] * lower[zone][unknown[b]]
                j[row, self.zone_place[zone]] += lift * by
        j /= self.capacity[:, None]
        for row in self.holding:
            j[row] = 0.0
        return j

    # ------------------------------------------------------------- events

    def watchers(self):
        """Functions whose zero is a switch, and what to do there. Thermostats first, then beds."""
        watched = []

        def watch(function, act):
            function.terminal = True
            watched.append((function, act))

        for t in self.thermostats:
            level = t["off_at"] if self.on[t["name"]] else t["on_at"]
            function = lambda _now, y, place=t["place"], level=level: y[place] - level
            function.direction = -1 if self.on[t["name"]] else 1
            watch(function, lambda y, name=t["name"]: self.on.update({name: not self.on[name]}))
        for i in range(len(self.machines)):
            if self.bed_state[i] in ("heating", "coasting"):
                function = lambda _now, y, place=self.bed(i), level=self.bed_set(i): y[place] - level
                function.direction = 1 if self.bed_state[i] == "heating" else -1
                watch(function, lambda y, i=i: self.reach(i, y))
            elif self.bed_state[i] == "holding":
                none = lambda _now, y, i=i: self.holding_power(i, y)
                none.direction = -1
                watch(none, lambda y, i=i: self.bed_state.__setitem__(i, "coasting"))
                full = lambda _now, y, i=i: self.holding_power(i, y) - self.bed_most(i)
                full.direction = 1
                watch(full, lambda y, i=i: self.bed_state.__setitem__(i, "heating"))
        return watched

    def reach(self, i, y):
        y[self.bed(i)] = self.bed_set(i)
        power = self.holding_power(i, y)
        self.bed_state[i] = "coasting" if power < 0.0 else "heating" if power > self.bed_most(i) else "holding"


def solve_small(matrix, right):
    """Gauss without pivoting; the matrix is diagonally dominant. The two by two case is written out for speed."""
    if len(right) == 2:
        (a, b), (c, d) = matrix
        det = a * d - b * c
        return [(d * right[0] - b * right[1]) / det, (a * right[1] - c * right[0]) / det]
    return np.linalg.solve(np.array(matrix), np.array(right)).tolist()


def one_day(plant, method, atol, jacobian, grid=None):
    """Runs the day; with a grid returns temperatures there too."""
    plant.begin()
    plant.air_tolerance = min(1e-6, max(1e-12, 1e-3 * atol))
    y, now = plant.start.copy(), 0.0
    zone_rows = [place for place in plant.zone_place if place < plant.n]
    peaks = y[zone_rows].copy()
    rows = [] if grid is None else [y.copy()]
    at = 1
    extra = {"jac": plant.jacobian} if jacobian == "full" else {}
    for stop in plant.breaks:
        for t in plant.thermostats:
            here = y[t["place"]]
            if not plant.on[t["name"]] and here >= t["on_at"]:
                plant.on[t["name"]] = True
            elif plant.on[t["name"]] and here <= t["off_at"]:
                plant.on[t["name"]] = False
        plant.set_modes(now, y)
        plant.settle(now)
        while now < stop:
            watched = plant.watchers()
            answer = solve_ivp(
                plant.right_side,
                (now, stop),
                y,
                method=method,
                atol=atol,
                rtol=2.3e-14,  # the least that SciPy takes: the tolerance is absolute
                events=[function for function, _ in watched],
                dense_output=grid is not None,
                **extra,
            )
            if answer.status < 0:
                raise SystemExit(answer.message)
            reached = answer.t[-1]
            if grid is not None:
                until = at
                while until < len(grid) and grid[until] <= reached:
                    until += 1
                if until > at:
                    rows.extend(answer.sol(grid[at:until]).T)
                at = until
            peaks = np.maximum(peaks, answer.y[zone_rows].max(axis=1))
            plant.work["steps"] += len(answer.t) - 1
            y, now = answer.y[:, -1].copy(), reached
            if answer.status == 1:
                for (_, act), times in zip(watched, answer.t_events):
                    if len(times) > 0:
                        act(y)
                        plant.work["events"] += 1
                plant.settle(now)
    return peaks, rows


def main():
    file, atol, method = sys.argv[1], float(sys.argv[2]), sys.argv[3]
    options = {"jacobian": "full", "repeat": "1", "samples": "", "every": "60"}
    options.update(word.split("=", 1) for word in sys.argv[4:])
    plant = Plant(file)
    if options["samples"]:
        grid = np.arange(0.0, plant.duration + 1e-9, float(options["every"]))
        peaks, rows = one_day(plant, method, atol, options["jacobian"], grid)
        np.array(rows).astype("<f8").tofile(options["samples"])
    times = []
    for _ in range(int(options["repeat"])):
        start = time.process_time()
        peaks, _ = one_day(plant, method, atol, options["jacobian"])
        times.append(time.process_time() - start)
    print(json.dumps({"cpuMs": 1e3 * min(times, default=0.0), "peaks": peaks.tolist(), **plant.work}))


if __name__ == "__main__":
    main()
