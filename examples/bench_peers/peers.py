"""The same simple network by this project's solver and by general-purpose ones.

All solve dp = r m|m| in 60 branches with balanced nodes. Every time is a median. The residual is the
largest imbalance over the total or the largest closure over the drop, whichever is larger, measured from the
flows and pressures that the solver gave back; ours is the certificate's, against our own laws, which are
compressible.
"""

import ctypes
import json
import math
import os
import statistics
import subprocess
import sys
import tempfile
import time

try:
    import numpy
    import scipy
    from scipy.optimize import root

    import wntr
    from wntr.epanet.toolkit import ENepanet
except ImportError as missing:
    # wntr uses six without asking for it.
    print(f"{missing}: the comparison with other solvers is left out; it takes")
    print("  python3 -m pip install numpy scipy wntr six")
    sys.exit(0)

# Largest differences of a port's share from ours; density varies by 1e-5 in ours only.
SHARES_SCIPY = 1e-5
SHARES_ENGINE = 1e-3
# About the air's, for first guesses and scales only [kg/m3].
DENSITY = 1.2
# Between two steps, over the unknowns: rounding is not far below.
SCIPY_TOLERANCE = 1e-13
SCIPY_REPEATS = 201
ENGINE_REPEATS = 5001
# Error of a head and change of a flow that end the engine's iteration, over the drop and the total.
ENGINE_TIGHT = 1e-10

# What the toolkit's header calls these.
EN_MINORLOSS, EN_FLOW, EN_HEAD = 3, 8, 10
EN_ITERATIONS = 0
EN_HEADERROR, EN_FLOWCHANGE = 5, 6
NEW_FLOWS, KEPT_FLOWS = 10, 0


def ours():
    """What the program beside this file says."""
    command = ["cargo", "run", "--quiet", "--release", "--example", "bench_peers"]
    return json.loads(subprocess.run(command, check=True, stdout=subprocess.PIPE).stdout)


class Case:
    """The network as arrays; `r` has a row each for the network and the one the warm start comes from."""

    def __init__(self, told):
        self.told = told
        self.names = told["nodes"]
        at = {name: number for number, name in enumerate(self.names)}
        branches = told["branches"]
        self.ends = numpy.array([(at[b["from"]], at[b["to"]]) for b in branches])
        self.area = numpy.array([b["area"] for b in branches])
        self.r = numpy.array([[b["r"] for b in branches], [b["r_before"] for b in branches]])
        self.held = {at["source"]: told["drop"]}
        self.ports = [number for number, name in enumerate(self.names) if name.startswith("port ")]
        self.held.update({number: 0.0 for number in self.ports})
        self.free = [number for number in range(len(self.names)) if number not in self.held]
        # Air into each node for air in each branch.
        self.into = numpy.zeros((len(self.names), len(branches)))
        for branch, (start, end) in enumerate(self.ends):
            self.into[start, branch], self.into[end, branch] = -1.0, 1.0
        our_flow = numpy.array([b["flow"] for b in branches])
        self.our_shares = self.shares(our_flow)

    def shares(self, flow):
        drawn = self.into[self.ports] @ flow
        return drawn / drawn.sum()

    def residual(self, flow, pressure):
        """Largest imbalance over the total and largest closure over the drop, the larger of both."""
        total = (self.into[self.ports] @ flow).sum()
        imbalance = numpy.abs(self.into[self.free] @ flow).max() / total
        falls = pressure[self.ends[:, 0]] - pressure[self.ends[:, 1]]
        closure = numpy.abs(falls - self.r[0] * flow * numpy.abs(flow)).max() / self.told["drop"]
        return max(imbalance, closure)

    def check(self, who, flow, allowed):
        worst = numpy.abs(self.shares(flow) / self.our_shares - 1.0).max()
        if not worst < allowed:
            sys.exit(f"{who}: a port's share differs by {worst:.1e}, allowed is {allowed:.0e}")
        return worst


class Scipy:
    """Unknowns are the flows and the pressures of the nodes that nothing holds, both near one."""

    def __init__(self, case):
        self.case = case
        self.count = len(case.ends)
        self.drop = case.told["drop"]
        self.into = numpy.ascontiguousarray(case.into[case.free])
        self.driven = -case.into.T @ [case.held.get(number, 0.0) for number in range(len(case.names))]
        self.driven /= self.drop
        self.unit = self.linear()
        self.jacobian = numpy.zeros((self.count + len(case.free),) * 2)
        self.jacobian[: self.count, self.count :] = -self.into.T
        self.jacobian[self.count :, : self.count] = self.into
        self.diagonal = numpy.arange(self.count)

    def linear(self):
        """Flows and pressures with every loss taken at one velocity head of a third of the drop."""
        case = self.case
        # Flow at the same speed in all areas, as our own start takes it.
        flux = math.sqrt(2.0 * DENSITY * self.drop / 3.0)
        conductance = 1.0 / (case.r[0] * flux * case.area)
        weighted = self.into * conductance
        pressure = numpy.linalg.solve(weighted @ self.into.T, -weighted @ (self.driven * self.drop))
        flow = conductance * (self.driven * self.drop - self.into.T @ pressure)
        self.flow_unit = numpy.abs(case.into[case.ports] @ flow).mean()
        return numpy.concatenate([flow / self.flow_unit, pressure / self.drop])

    def solve(self, start, r):
        scaled = r * self.flow_unit**2 / self.drop
        count, jacobian, diagonal = self.count, self.jacobian, self.diagonal

        def equations(x):
            flow = x[:count]
            fall = self.driven - self.into.T @ x[count:]
            return numpy.concatenate([scaled * flow * numpy.abs(flow) - fall, self.into @ flow])

        def slopes(x):
            jacobian[diagonal, diagonal] = 2.0 * scaled * numpy.abs(x[:count])
            jacobian[:count, count:] = self.into.T
            return jacobian

        return root(equations, start, jac=slopes, method="hybr", tol=SCIPY_TOLERANCE)

    def state(self, x):
        case = self.case
        pressure = numpy.zeros(len(case.names))
        for number, value in case.held.items():
            pressure[number] = value
        pressure[case.free] = x[self.count :] * self.drop
        return x[: self.count] * self.flow_unit, pressure

    def rows(self):
        case = self.case
        before = self.solve(self.unit, case.r[1]).x
        for how, start in (("cold", self.unit), ("warm", before)):
            found = self.solve(start, case.r[0])
            flow, pressure = self.state(found.x)
            name = "scipy.optimize.root, hybr"
            worst = case.check(name, flow, SHARES_SCIPY)
            seconds = []
            for _ in range(SCIPY_REPEATS):
                begun = time.perf_counter()
                self.solve(start, case.r[0])
                seconds.append(time.perf_counter() - begun)
            work = f"{found.nfev} evaluations, {found.njev} Jacobians"
            yield name, how, statistics.median(seconds), case.residual(flow, pressure), worst, work


class Engine:
    """wntr's engine, called from here without wntr's own simulator: pipes with minor losses."""

    # Area of a pipe over that of the branch, and head between source and ports in feet. No pipe's slope is
    # less than 1e-7 feet per cubic foot and second here, whatever its losses: that is what keeps the residual
    # up, the less the smaller the flow and the higher the head. This head takes the fewest trials.
    STRETCH = 1.0
    HEAD = 3.0

    def __init__(self, case, folder):
        self.case = case
        self.area = case.area * self.STRETCH
        self.diameter = numpy.sqrt(4.0 / math.pi * self.area)
        self.per_pressure = self.HEAD / case.told["drop"]
        # With this the minor coefficients come to about the branch's own number of velocity heads.
        self.per_flow = self.STRETCH * math.sqrt(32.2 * self.per_pressure / DENSITY)
        self.heads = case.r * self.per_pressure / self.per_flow**2
        # The engine's own constant, 8 / (g pi2) in feet.
        self.minor = self.heads * self.diameter**4 / 0.02517
        path = os.path.join(folder, "network")
        with open(path + ".inp", "w", encoding="ascii") as file:
            file.write(self.text())
        self.toolkit = ENepanet(version=2.2)
        self.toolkit.ENopen(path + ".inp", path + ".rpt", path + ".bin")
        self.library, self.project = self.toolkit.ENlib, self.toolkit._project
        self.names = [f"n{number}" for number in range(len(case.names))]
        self.node_at = [self.toolkit.ENgetnodeindex(name) for name in self.names]
        self.link_at = [self.toolkit.ENgetlinkindex(f"b{number}") for number in range(len(case.ends))]

    def text(self):
        case = self.case
        lines = ["[JUNCTIONS]"] + [f"n{number} 0 0" for number in case.free]
        lines += ["[RESERVOIRS]"]
        lines += [f"n{number} {value * self.per_pressure!r}" for number, value in case.held.items()]
        lines += ["[PIPES]"]
        for number, (start, end) in enumerate(case.ends):
            # Short and smooth: friction stays at the least slope the engine gives any pipe.
            size = f"0.001 {float(self.diameter[number] * 12.0)!r} 1000000"
            minor = float(self.minor[0][number])
            lines.append(f"b{number} n{start} n{end} {size} {minor!r} OPEN")
        lines += ["[OPTIONS]", "UNITS CFS", "HEADLOSS H-W", "TRIALS 200", "ACCURACY 0.00001"]
        lines += ["[TIMES]", "DURATION 0", "[REPORT]", "STATUS NO", "SUMMARY NO", "[END]", ""]
        return "\n".join(lines)

    def call(self, name, *arguments):
        code = getattr(self.library, name)(self.project, *arguments)
        if code != 0:
            raise RuntimeError(f"{name} answers {code}")

    def demand(self, tight):
        total = sum(self.case.told["port_flows"]) * self.per_flow
        for option, unit in ((EN_HEADERROR, self.HEAD), (EN_FLOWCHANGE, total)):
            self.call("EN_setoption", option, ctypes.c_double(tight * unit))

    def give(self, which):
        for index, value in zip(self.link_at, self.minor[which]):
            self.call("EN_setlinkvalue", index, EN_MINORLOSS, ctypes.c_double(value))

    def run(self, flows):
        """Time of one solution, with the tables laid out; a call from here costs about a microsecond."""
        init, solve, project = self.library.EN_initH, self.library.EN_runH, self.project
        at = ctypes.c_long()
        where = ctypes.byref(at)
        begun = time.perf_counter()
        first = init(project, flows)
        second = solve(project, where)
        seconds = time.perf_counter() - begun
        if first or second:
            raise RuntimeError(f"the engine answers {first}, {second}")
        return seconds

    def whole(self):
        solve, project = self.library.EN_solveH, self.project
        begun = time.perf_counter()
        code = solve(project)
        seconds = time.perf_counter() - begun
        if code:
            raise RuntimeError(f"EN_solveH answers {code}")
        return seconds

    def trials(self):
        value = ctypes.c_double()
        self.call("EN_getstatistic", EN_ITERATIONS, ctypes.byref(value))
        return f"{value.value:.0f} trials"

    def state(self):
        value = self.toolkit.ENgetlinkvalue
        flow = numpy.array([value(index, EN_FLOW) for index in self.link_at]) / self.per_flow
        value = self.toolkit.ENgetnodevalue
        head = numpy.array([value(index, EN_HEAD) for index in self.node_at]) / self.per_pressure
        return flow, head

    def rows(self):
        for name, tight in (("wntr's C engine", ENGINE_TIGHT), ("  with its usual accuracy", 0.0)):
            self.demand(tight)
            self.call("EN_openH")
            self.give(0)
            self.run(NEW_FLOWS)
            yield self.row(name, "cold", (self.run(NEW_FLOWS) for _ in range(ENGINE_REPEATS)))
            yield self.row(name, "warm", self.warm())
            self.call("EN_closeH")
            yield self.row(name, "with layout", (self.whole() for _ in range(ENGINE_REPEATS)))

    def warm(self):
        for _ in range(ENGINE_REPEATS):
            self.give(1)
            self.run(NEW_FLOWS)
            self.give(0)
            yield self.run(KEPT_FLOWS)

    def row(self, name, how, times):
        seconds = statistics.median(times)
        trials = self.trials()
        flow, pressure = self.state()
        worst = self.case.check(name, flow, SHARES_ENGINE)
        return name, how, seconds, self.case.residual(flow, pressure), worst, trials


def main():
    told = ours()
    case = Case(told)
    own = max(told["imbalance"], told["closure"])
    print("The same simple network, 60 branches and ten ports, by several solvers")
    print(f"  numpy {numpy.__version__}, scipy {scipy.__version__}, wntr {wntr.__version__}")
    rows = []
    for how, key in (("cold", "cold"), ("warm", "warm"), ("with layout", "with_layout")):
        steps = f"{told[key]['steps']} steps"
        rows.append(("Evenport", how, told[key]["time"], own, 0.0, steps))
    rows += Scipy(case).rows()
    with tempfile.TemporaryDirectory() as folder:
        engine = Engine(case, folder)
        rows += engine.rows()
        engine.toolkit.ENclose()
    own_times = {how: seconds for name, how, seconds, *_ in rows if name == "Evenport"}
    print("  goals: scipy.optimize.root at least 10 times our time, wntr's C engine at least 1.5 times")
    form = "  {:<27}{:<13}{:>11}{:>10}{:>12}{:>9}  {}"
    print(form.format("solver", "start", "time", "residual", "shares off", "to ours", "work"))
    for name, how, seconds, residual, worst, work in rows:
        ratio = f"{seconds / own_times[how]:.2f}x"
        figures = (f"{seconds * 1e6:.1f} us", f"{residual:.0e}", f"{worst:.0e}", ratio)
        print(form.format(name, how, *figures, work))


main()
