#!/usr/bin/python3
"""What numpy and scipy compute by other ways than this program, written into tables beside this.

Debian 12: apt-get install python3-scipy. The tests read the committed tables and need neither.
"""
import sys

import numpy
import scipy
from scipy import integrate, ndimage, optimize, signal, stats
from scipy.spatial.transform import Rotation

VERSIONS = f"scipy {scipy.__version__}, numpy {numpy.__version__}, Python {sys.version.split()[0]}"


def cell(value):
    if value is None:
        return ""
    if isinstance(value, str):
        return value
    if numpy.ndim(value):
        return " ".join(cell(one) for one in value)
    return repr(float(value)).removesuffix(".0")


def write(file, source, rows, note=()):
    with open(file, "w") as out:
        print(f"# Made by make_scipy.py with {VERSIONS}.", f"# Source: {source}", *note, sep="\n", file=out)
        print(",".join(rows[0]), file=out)
        for row in rows:
            print(",".join(cell(one) for one in row.values()), file=out)


# 1. Bake: the share of a milestone's time, by quadrature of the rate over the logged temperatures.

def minutes_at(points, surface_c):
    """Between the points ln(time) is straight over 1/T; over the hottest its time holds."""
    inverse = [1 / (c + 273.15) for c, _ in points]
    logs = [numpy.log(m) for _, m in points]
    if surface_c < points[0][0]:
        return numpy.inf
    return float(numpy.exp(numpy.interp(1 / (surface_c + 273.15), inverse[::-1], logs[::-1])))


def bake(points, readings, warmer=0.0):
    """Share over time by quad, cut at readings and where the rate has corners."""
    at, surface = map(numpy.array, zip(*readings))
    surface = surface + warmer
    cuts = set(at)
    for (t0, c0), (t1, c1) in zip(zip(at, surface), zip(at[1:], surface[1:])):
        for corner, _ in points:
            if min(c0, c1) < corner < max(c0, c1):
                cuts.add(t0 + (corner - c0) / (c1 - c0) * (t1 - t0))
    cuts = sorted(cuts)

    def until(end):
        total = 0.0
        for low, high in zip(cuts, cuts[1:] + [1e9]):
            if low >= end:
                break
            high = min(high, end)
            if minutes_at(points, numpy.interp((low + high) / 2, at, surface)) < numpy.inf:
                inside = lambda t: 1 / minutes_at(points, max(points[0][0], numpy.interp(t, at, surface)))
                total += integrate.quad(inside, low, high, epsabs=1e-13, epsrel=1e-13, limit=200)[0]
        return total
    return until


def bakes():
    chance = numpy.random.default_rng(3)
    minutes = numpy.arange(0, 62, 2.0)
    heating = 62 - 40 * numpy.exp(-minutes / 7)
    measured = [(t, round(c + chance.normal(0, 0.6), 1)) for t, c in zip(minutes, heating)]
    cooling = measured + [(60 + t, round(22 + 38 * numpy.exp(-t / 18) + chance.normal(0, 0.4), 1))
                          for t in numpy.arange(5, 65, 5.0)]
    one, two, three = [(60, 30)], [(20, 960), (60, 30)], [(20, 960), (40, 150), (60, 30)]
    cases = [("air dry, cool night", two, [(0, 22), (180, 21), (480, 16), (600, 17), (900, 23)], 1500),
             ("bake, one point", one, measured, 60), ("bake, two points", two, measured, 45),
             ("bake, three points", three, measured, 60), ("bake and cool", three, cooling, 124),
             ("over the hottest point", [(20, 960), (50, 60)], cooling, 100),
             ("infrared, fast", [(40, 90), (80, 12)], [(0, 24), (4, 63), (8, 84), (14, 88), (18, 60), (30, 35)], 30),
             ("not yet", three, measured[:12], 22)]
    rows = []
    for name, points, readings, now in cases:
        until = bake(points, readings)
        share = until(now)
        reached = []
        for warmer in (0, 2, -2):
            shifted = bake(points, readings, warmer)
            rate = 1 / minutes_at(points, readings[-1][1] + warmer)
            if shifted(now) >= 1:
                reached.append(optimize.brentq(lambda t: shifted(t) - 1, 0, now, xtol=1e-11, rtol=1e-14))
            else:
                reached.append(now + (1 - shifted(now)) / rate if rate > 0 else None)
        if name == "bake, three points":  # and once more as a differential equation
            at, surface = zip(*readings)
            check = sum(integrate.solve_ivp(lambda t, _: [1 / minutes_at(points, numpy.interp(t, at, surface))],
                                            span, [0.0], rtol=1e-10, atol=1e-13, max_step=0.05).y[0, -1]
                        for span in zip(at, at[1:]))
            assert abs(check - share) < 1e-6, (check, share)
        rows.append({"case": name.replace(",", ";"), "points": [v for p in points for v in p],
                     "readings": [v for r in readings for v in r], "now_min": now, "done_percent": 100 * share,
                     "reached_min": reached[0], "early_min": reached[1], "late_min": reached[2]})
    write("scipy_bakes.csv", "scipy 1.10.1; integrate.quad, brentq and solve_ivp, rate between two points by Arrhenius", rows,
          ["# points: C and minutes; readings: minutes and C, our own, like a logged bake."])


# 2. Panel fit: bounded least squares in the places of three fastener travels as unknowns.

def general(name, flush, points, bolts):
    a = numpy.array([[1, x / 1000, y / 1000] if flush else
                     [-numpy.cos(d), -numpy.sin(d), (numpy.cos(d) * y - numpy.sin(d) * x) / 1000]
                     for x, y, d, *_ in points])
    wish = numpy.array([wanted - found for *_, found, wanted, _ in points])
    weight = numpy.array([w for *_, w in points])
    g, h = [], []
    for x, y, along, across in bolts:
        rows = [([1, x / 1000, y / 1000], along)] if flush else [([1, 0, -y / 1000], along), ([0, 1, x / 1000], across)]
        for row, travel in rows:
            g += [row, [-one for one in row]]
            h += [travel, travel]
    g, h = numpy.array(g), numpy.array(h)
    found = optimize.minimize(lambda u: numpy.sum(weight * (a @ u - wish) ** 2), numpy.zeros(3),
                              jac=lambda u: 2 * a.T @ (weight * (a @ u - wish)), method="SLSQP",
                              constraints={"type": "ineq", "fun": lambda u: h - g @ u, "jac": lambda u: -g},
                              options={"ftol": 1e-16, "maxiter": 500}).x
    return {"case": name, "flush": "yes" if flush else "no",
            "points": [v for x, y, d, f, w, k in points for v in (x, y, numpy.degrees(d), f, w, k)],
            "fasteners": [v for one in bolts for v in one], "shift_x": found[0], "shift_y": found[1],
            "turn": found[2] if flush else numpy.degrees(found[2] / 1000),
            "rms": numpy.sqrt(numpy.sum(weight * (a @ found - wish) ** 2) / weight.sum())}


def fits():
    chance = numpy.random.default_rng(11)
    rows = []

    def add(name, flush, points, fasteners, bounds, to_travels):
        a = numpy.array([[1, x / 1000, y / 1000] if flush else
                         [-numpy.cos(d), -numpy.sin(d), (numpy.cos(d) * y - numpy.sin(d) * x) / 1000]
                         for x, y, d, *_ in points])
        wish = numpy.array([wanted - found for *_, found, wanted, _ in points])
        root = numpy.sqrt([w for *_, w in points])
        back = numpy.linalg.inv(numpy.array(to_travels))  # travels -> unknowns
        bounded = optimize.lsq_linear((a @ back) * root[:, None], wish * root,
                                      (-numpy.array(bounds), numpy.array(bounds)), method="bvls", tol=1e-15)
        free = numpy.linalg.lstsq(a * root[:, None], wish * root, rcond=None)[0]
        move = back @ bounded.x
        rms = lambda u: numpy.sqrt(numpy.sum(((a @ u - wish) * root) ** 2) / numpy.sum(root ** 2))
        rows.append({"case": name, "flush": "yes" if flush else "no",
                     "points": [v for x, y, d, f, w, k in points for v in (x, y, numpy.degrees(d), f, w, k)],
                     "fasteners": [v for f in fasteners for v in f], "shift_x": move[0], "shift_y": move[1],
                     "turn": move[2] if flush else numpy.degrees(move[2] / 1000), "rms": rms(move),
                     "free_rms": rms(free), "stopped": "yes" if numpy.any(bounded.active_mask) else "no"})

    for k, travel in enumerate((9.0, 2.0, 1.0, 0.4, 0.0)):
        points = [(x, y, numpy.radians(d), round(4 + chance.normal(0, 1.6), 1), 4.0, w) for x, y, d, w in
                  ((0, 100, 180, 1), (0, 600, 180, 1), (1050, 80, 0, 1), (1050, 620, 0, 2), (300, 0, 270, 1), (800, 0, 270, .5))]
        hinges = [(40, 150, travel, travel), (40, 520, 100, travel)]
        # Unknowns: x and y of the first fastener, y of the second; its x may go anywhere.
        first, second = hinges
        to = [[1, 0, -first[1] / 1000], [0, 1, first[0] / 1000], [1, 0, -second[1] / 1000]]
        hinges = [(first[0], first[1], travel, travel), (second[0], second[1], travel, 100)]
        add(f"gap {k}", False, points, hinges, (travel or 1e-12,) * 3, to)
    for k, travels in enumerate(((9, 9, 9), (1.5, 1.5, 1.5), (0.6, 2, 0.3), (0.2, 0.2, 5))):
        points = [(x, y, 0.0, round(chance.normal(0, 1.5), 2), 0.0, 1) for x, y in
                  ((50, 50), (50, 1300), (600, 20), (600, 1330), (1050, 200), (1050, 1150))]
        at = [(100, 120), (100, 1230), (1000, 670)]
        add(f"flush {k}", True, points, [(x, y, t, 0) for (x, y), t in zip(at, travels)], travels,
            [[1, x / 1000, y / 1000] for x, y in at])
    # More slots than unknowns: no bounds of single unknowns any more, a general quadratic program.
    slots = []
    for k, travel in enumerate((3.0, 1.2, 0.7, 0.3)):
        points = [(x, y, numpy.radians(d), round(4 + chance.normal(0, 1.8), 1), 4.0, w) for x, y, d, w in
                  ((0, 60, 180, 1), (0, 640, 180, 1), (1100, 60, 0, 1), (1100, 640, 0, 1), (550, 0, 270, 1), (600, 700, 90, 2))]
        bolts = [(20, 120, travel, 2 * travel), (20, 560, travel, 1.5 * travel), (1080, 350, 2 * travel, 0.6 * travel)]
        slots.append(general(f"door {k}", False, points, bolts))
        points = [(x, y, 0.0, round(chance.normal(0, 1.5), 2), 0.0, 1) for x, y in
                  ((0, 0), (0, 1400), (550, 0), (550, 1400), (1100, 100), (1100, 1300))]
        bolts = [(x, y, t * travel, 0) for x, y, t in ((80, 100, 1), (80, 1300, .8), (900, 150, .5), (900, 1250, .6), (500, 700, .3))]
        slots.append(general(f"hood {k}", True, points, bolts))
    write("scipy_panel_slots.csv", "scipy 1.10.1; optimize.minimize SLSQP", slots,
          ["# points and fasteners as in scipy_panel_fits.csv; good to 1e-6 mm."])
    write("scipy_panel_fits.csv", "scipy 1.10.1; optimize.lsq_linear, bounded-variable least squares", rows,
          ["# points: x y mm, degrees, found, wanted, weight; fasteners: x y mm, travel x, travel y."])


# 2b. A door of a car as this program knows it: the hinges bound x and y, the striker is looked at after.

def cars():
    chance = numpy.random.default_rng(29)
    wanted = 6.0
    width, height = 1076.340860543718, 689.99139118316418
    hinges = [(0.04 * width, 0.65 * height), (0.04 * width, 0.2 * height)]
    striker = (0.97 * width, 0.5 * height)
    travel = 3.0
    places = [(1074, 639, -2), (1069, 347, 0), (1075, 55, 2), (6, 621, 178), (0, 337, 180), (7, 53, 183),
              (91, 0, 270), (544, 0, 270), (996, 0, 270)]
    rows = []
    for name, move in (("in reach", (-1.4, 0.8, 0.9)), ("too far to the front", (-4.6, 0.5, 0.2)),
                       ("turned too far", (-1.0, -2.9, 5.5))):
        a = numpy.array([[-numpy.cos(d), -numpy.sin(d), (numpy.cos(d) * y - numpy.sin(d) * x) / 1000]
                         for x, y, d in ((x, y, numpy.radians(d)) for x, y, d in places)])
        found = numpy.round(wanted - a @ numpy.array(move) + chance.normal(0, 0.05, len(places)), 1)
        assert found.min() >= 0
        wish = wanted - found
        (x1, y1), (_, y2) = hinges
        # Unknowns: x and y of the upper hinge, x of the lower one; its y is that of the upper one.
        back = numpy.linalg.inv(numpy.array([[1, 0, -y1 / 1000], [0, 1, x1 / 1000], [1, 0, -y2 / 1000]]))
        bounded = optimize.lsq_linear(a @ back, wish, (-travel, travel), method="bvls", tol=1e-15)
        u = back @ bounded.x
        ends = [u[0] - u[2] * striker[1] / 1000, u[1] + u[2] * striker[0] / 1000]
        assert max(map(abs, ends)) < travel + 1e-9, ends
        free = numpy.linalg.lstsq(a, wish, rcond=None)[0]
        rms = lambda v: numpy.sqrt(numpy.mean((a @ v - wish) ** 2))
        rows.append({"case": name, "points": [v for (x, y, d), f in zip(places, found) for v in (x, y, d, f, wanted)],
                     "hinges": [v for one in hinges for v in one], "striker": list(striker), "travel": travel,
                     "upper": [u[0] - u[2] * y1 / 1000, u[1] + u[2] * x1 / 1000],
                     "lower": [u[0] - u[2] * y2 / 1000, u[1] + u[2] * x1 / 1000], "at_striker": ends,
                     "after": found + a @ u, "rms": rms(u), "free_rms": rms(free),
                     "stopped": "yes" if numpy.any(bounded.active_mask) else "no"})
    write("scipy_panel_cars.csv", "scipy 1.10.1; optimize.lsq_linear, bounded-variable least squares", rows,
          ["# The left front door of a four-door sedan. points: x y mm, degrees, found, wanted; moves and after in mm."])


# 3. Rigid moves. Umeyama 1991: the inputs of his example are from memory; without scaling here.

def rigid_moves():
    panel = [(0, 0), (900, 0), (900, 450), (0, 450), (450, 225)]
    noise = [(.05, -.03), (-.02, .04), (.01, .02), (-.03, -.01), (0, .02)]
    turn = numpy.radians(0.8)
    moved = [(numpy.cos(turn) * x - numpy.sin(turn) * y + 1.2, numpy.sin(turn) * x + numpy.cos(turn) * y - 0.7)
             for x, y in panel]
    cases = [("exact", panel, moved), ("noise", panel, numpy.add(moved, noise)),
             ("mirrored, Umeyama", [(0, 0), (1, 0), (0, 2)], [(0, 0), (-1, 0), (0, 2)]),
             ("half a turn", panel, [(-x + 3, -y) for x, y in panel])]
    rows = []
    for name, source, target in cases:
        a, b = numpy.array(source, float), numpy.array(target, float)
        flat = lambda p: numpy.c_[p - p.mean(0), numpy.zeros(len(p))]
        if name.startswith("mirrored"):  # align_vectors may leave the plane: the flat case by Kabsch's SVD
            u, _, vt = numpy.linalg.svd((b - b.mean(0)).T @ (a - a.mean(0)))
            r = u @ numpy.diag([1, numpy.linalg.det(u) * numpy.linalg.det(vt)]) @ vt
        else:
            r = Rotation.align_vectors(flat(b), flat(a))[0].as_matrix()[:2, :2]
        t = b.mean(0) - r @ a.mean(0)
        rms = numpy.sqrt(numpy.mean(numpy.sum((a @ r.T + t - b) ** 2, 1)))
        rows.append({"case": name.replace(",", ";"), "from": a.ravel(), "to": b.ravel(),
                     "turn_deg": numpy.degrees(numpy.arctan2(r[1, 0], r[0, 0])), "shift_x": t[0], "shift_y": t[1],
                     "rms": rms})
    write("scipy_rigid_moves.csv", "scipy 1.10.1; Rotation.align_vectors and numpy svd, Kabsch 1976, Umeyama 1991", rows)


# 4. Pictures of 32 x 32: steps, squares, a slope, one bright pixel, a sequence of pseudo-random gray.

def pictures():
    y, x = numpy.mgrid[:32, :32]
    lcg = numpy.array(open("picture_lcg.csv").read().split("gray\n")[1].split(), float).reshape(32, 32)
    spot = numpy.zeros((32, 32))
    spot[16, 16] = 255
    squares = ((x // 8 + y // 8) % 2) * 255.0
    blurred = ndimage.uniform_filter(squares, 3, mode="mirror")
    rows = []
    for name, picture in (("step", (x >= 16) * 255.0), ("squares", squares), ("slope", 8.0 * x), ("spot", spot),
                          ("lcg", lcg), ("squares blurred 3 x 3", blurred)):
        small = ndimage.convolve(picture, [[0, 1, 0], [1, -4, 1], [0, 1, 0]], mode="mirror").var()
        wide = ndimage.convolve(picture, [[2, 0, 2], [0, -8, 0], [2, 0, 2]], mode="mirror").var()
        rows.append({"picture": name, "variance": small, "variance_of_the_wide_kernel": wide})
    write("scipy_pictures.csv", "scipy 1.10.1; ndimage.convolve mode mirror, OpenCV 4.5.1 gives the same to 12 digits", rows)


# 5. Circles: the part of one inside an outline, and the area that several cover, by strips.

def crossings(outline, x):
    hits = []
    for (x0, y0), (x1, y1) in zip(outline, outline[1:] + outline[:1]):
        if (x0 <= x) != (x1 <= x):
            hits.append(y0 + (x - x0) / (x1 - x0) * (y1 - y0))
    hits.sort()
    return list(zip(hits[::2], hits[1::2]))


def strips(width, cuts):
    cuts = sorted(set(cuts))
    return sum(integrate.quad(width, low, high, epsabs=1e-7, epsrel=1e-12, limit=400)[0]
               for low, high in zip(cuts, cuts[1:]) if high > low)


def circles():
    square = [(0, 0), (1000, 0), (1000, 800), (0, 800)]
    notch = [(0, 0), (900, 0), (900, 300), (600, 450), (900, 600), (900, 800), (0, 800)]
    rows = []
    for outline, center, radius in ((square, (500, 400), 100), (square, (30, 700), 150), (square, (0, 0), 250),
                                    (square, (500, 400), 600), (square, (500, 400), 900), (square, (400, -50), 200),
                                    (notch, (620, 450), 200), (notch, (800, 450), 300), (notch, (200, 100), 400)):
        cx, cy = center
        def width(x):
            half = numpy.sqrt(max(0.0, radius ** 2 - (x - cx) ** 2))
            return sum(max(0.0, min(high, cy + half) - max(low, cy - half)) for low, high in crossings(outline, x))
        cuts = [max(0, cx - radius), min(1000, cx + radius)] + [px for px, _ in outline]
        for (x0, y0), (x1, y1) in zip(outline, outline[1:] + outline[:1]):  # where the circle cuts an edge
            dx, dy = x1 - x0, y1 - y0
            a, b, c = dx * dx + dy * dy, 2 * ((x0 - cx) * dx + (y0 - cy) * dy), (x0 - cx) ** 2 + (y0 - cy) ** 2 - radius ** 2
            if b * b >= 4 * a * c:
                cuts += [x0 + s * dx for s in ((-b - numpy.sqrt(b * b - 4 * a * c)) / 2 / a,
                                               (-b + numpy.sqrt(b * b - 4 * a * c)) / 2 / a) if 0 <= s <= 1]
        cuts = [c for c in cuts if cx - radius <= c <= cx + radius]
        rows.append({"outline": [v for p in outline for v in p], "x": cx, "y": cy, "radius": radius,
                     "area": strips(width, cuts)})
    write("scipy_circle_areas.csv", "scipy 1.10.1; integrate.quad, chords of a circle inside an outline", rows)

    rows = []
    for group in ([(0, 0, 75), (75, 0, 75)], [(0, 0, 75), (200, 0, 75)], [(0, 0, 100), (20, 10, 40)],
                  [(0, 0, 75), (90, 0, 75), (45, 80, 75)], [(0, 0, 75), (100, 0, 50), (150, 60, 90), (-60, 130, 65), (40, 40, 30)]):
        def width(x):
            pieces = sorted((cy - h, cy + h) for cx, cy, r in group if abs(x - cx) < r
                            for h in [numpy.sqrt(r * r - (x - cx) ** 2)])
            total, reach = 0.0, -numpy.inf
            for low, high in pieces:
                total += max(0.0, high - max(low, reach))
                reach = max(reach, high)
            return total
        cuts = [v for cx, _, r in group for v in (cx - r, cx + r)]
        for i, (x0, y0, r0) in enumerate(group):
            for x1, y1, r1 in group[:i]:
                d = numpy.hypot(x1 - x0, y1 - y0)
                if abs(r0 - r1) < d < r0 + r1:
                    along = (d * d + r0 * r0 - r1 * r1) / 2 / d
                    off = numpy.sqrt(r0 * r0 - along * along)
                    cuts += [x0 + (along * (x1 - x0) + s * off * (y1 - y0)) / d for s in (-1, 1)]
        rows.append({"circles": [v for one in group for v in one], "area": strips(width, cuts)})
    write("scipy_circle_unions.csv", "scipy 1.10.1; integrate.quad, chords of several circles together", rows)


# 6. Ready-by: the chance of a finish, from triangular distributions put together on a fine grid.

def forecasts():
    step = 0.01
    grid = numpy.arange(0, 700, step)
    tri = lambda a, m, b: stats.triang.cdf(grid, (m - a) / (b - a), a, b - a)

    def after(cdf, a, m, b):  # the sum of a time and an independent triangular one
        edges = numpy.diff(stats.triang.cdf(numpy.r_[grid, grid[-1] + step] - step / 2, (m - a) / (b - a), a, b - a))
        return numpy.minimum(1, signal.fftconvolve(cdf, edges)[:len(grid)])

    a, b, c = (30, 45, 90), (60, 70, 200), (20, 40, 50)
    finish = {"one": tri(*a), "chain": after(after(tri(*a), *b), *c), "two ends": tri(*a) * tri(*b),
              "joined": after(tri(*a) * tri(*b), *c)}
    rows = []
    for shape, cdf in finish.items():
        at = lambda p: float(numpy.interp(p, cdf, grid))
        for part in (0.25, 0.6, 0.9):
            rows.append({"shape": shape, "promised_min": round(at(part), 1),
                         "chance_percent": 100 * float(numpy.interp(round(at(part), 1), grid, cdf)),
                         "p10_min": at(0.1), "p50_min": at(0.5), "p90_min": at(0.9)})
    write("scipy_forecasts.csv", "scipy 1.10.1; stats.triang and fftconvolve, sums and maxima of triangular times", rows,
          ["# first 30 45 90, second 60 70 200, last 20 40 50 min: alone; one after the other; two at once; two, then last."])



# 7. The tightest circle: Kulldorff 1997 on the published points, a unit taken as a meter.

def scans():
    chance = numpy.random.default_rng(1997)
    radii = numpy.arange(50, 401, 50.0)
    strip = (numpy.arange(200) + 0.5) / 100 - 1  # of a circle's width

    def shares(at):  # of a square meter inside each circle, by 200 chords
        x = at[:, 0, None, None] + radii[:, None] * strip
        half = radii[:, None] * numpy.sqrt(1 - strip ** 2)
        y = at[:, 1, None, None]
        chords = numpy.clip(numpy.minimum(1000, y + half) - numpy.maximum(0, y - half), 0, None)
        return (chords * ((x > 0) & (x < 1000))).sum(2) * radii / 100 / 1e6

    def tightest(at):
        n = len(at)
        apart = numpy.hypot(*(at[:, None] - at[None]).transpose(2, 0, 1))
        inside = (apart[:, :, None] <= radii).sum(1)
        expected = n * shares(at)
        with numpy.errstate(divide="ignore", invalid="ignore"):
            rest = numpy.where(inside < n, (n - inside) * numpy.log((n - inside) / (n - expected)), 0)
            ratio = numpy.where(inside > expected, inside * numpy.log(inside / expected) + rest, 0)
        mark, radius = numpy.unravel_index(ratio.argmax(), ratio.shape)
        return ratio[mark, radius], at[mark], radii[radius], inside[mark, radius], expected[mark, radius]

    rows = []
    for name in ("cells", "redwood", "japanesepines"):
        lines = [line for line in open(f"points_{name}.csv") if line[0].isdigit()]
        at = numpy.array([[float(v) for v in line.split(",")] for line in lines]) * 1000
        if name == "redwood":
            at[:, 1] += 1000  # its window is below the axis
        seen, center, radius, inside, expected = tightest(at)
        drawn = numpy.array([tightest(chance.random((len(at), 2)) * 1000)[0] for _ in range(4999)])
        rows.append({"points": name, "x": center[0], "y": center[1], "radius": radius, "marks": inside,
                     "expected": expected, "patterns": 4999, "chance": (1 + (drawn >= seen).sum()) / 5000})
    write("scipy_scans.csv", "numpy 1.24.2; circular scan statistic of Kulldorff 1997 on points of spatstat.data", rows)


bakes()
fits()
cars()
rigid_moves()
pictures()
circles()
forecasts()
scans()
