#!/usr/bin/python3
"""Critical paths and shortest walks, written into critical_paths.csv and walks.csv beside this script.

Debian 12: apt-get install python3-networkx. The tests read the committed table and need neither.
Times: ES = max EF of what is before, LF = min LS of what is behind, total float LS - ES, free float
min ES of what is behind - EF; of three durations the expected one, (a + 4 m + b) / 6.
"""
import itertools
import math
import random
import sys

import networkx

EXAMPLES = {
    # studylib.net, document 8378728, a worked example of seven activities; the free floats are computed.
    "seven activities": "A6 B2:A C2:A D3:B E4:DF F2:C G1:E",
    # wizedu.com, question 717873, three durations each.
    "three durations": "A5/5/7 B1/2/5 C5/5/5:A D4/8/13:A E1/10/17:BC F1/5/7:D G2/6/9:D H4/4/6:EF I2/7/10:GH "
                       "J2/4/7:I K6/10/13:I L2/6/6:J M2/2/3:K N7/7/12:LM",
    # brainmass.com, project management 114392, data only: two critical paths at once.
    "two critical paths": "A7 B5 C3:A D5:B E4:C F4:CD G3:EF H1:G",
}


def drawn(count, seed):
    """Whole durations and up to three predecessors each: floats tie and critical paths meet."""
    chance = random.Random(seed)
    out = {}
    for i in range(count):
        before = [f"n{j}" for j in sorted(chance.sample(range(max(0, i - 7), i), min(i, chance.randint(0, 3))))]
        out[f"n{i}"] = ((chance.randint(0, 6),) * 3, before)
    return out


def read(text):
    out = {}
    for item in text.split():
        head, _, before = item.partition(":")
        durations = tuple(float(one) for one in head[1:].split("/"))
        out[head[0]] = (durations * 3 if len(durations) == 1 else durations, list(before))
    return out


def times(work):
    graph = networkx.DiGraph()
    for name, (durations, before) in work.items():
        graph.add_node(name)
        graph.add_edges_from((one, name) for one in before)
    length = {name: (a + 4 * m + b) / 6 if len({a, m, b}) > 1 else m for name, ((a, m, b), _) in work.items()}
    order = list(networkx.topological_sort(graph))
    early, late = {}, {}
    for name in order:
        early[name] = max((early[one] + length[one] for one in graph.predecessors(name)), default=0)
    end = max(early[name] + length[name] for name in order)
    for name in reversed(order):
        late[name] = min((late[one] - length[one] for one in graph.successors(name)), default=end)
    for name in work:
        done = early[name] + length[name]
        next_start = min((early[one] for one in graph.successors(name)), default=end)
        yield name, length[name], early[name], done, late[name] - length[name], late[name], next_start - done, end


def walks():
    """Every order of a few places is tried; round a circle and along a line the shortest is known."""
    chance = random.Random(12)
    sets = [[(chance.randint(0, 5000), chance.randint(0, 2500)) for _ in range(count)] for count in (2, 4, 6, 7, 8, 9)]
    for places in sets:
        # From the end: an order and its reverse are one walk.
        orders = (order for order in itertools.permutations(range(len(places))) if order[0] < order[-1])
        yield places, min(sum(math.dist(places[a], places[b]) for a, b in zip(order, order[1:])) for order in orders)
    ring = [(1000 * math.cos(math.pi * i / 6), 1000 * math.sin(math.pi * i / 6)) for i in range(12)]
    chance.shuffle(ring)
    yield ring, 11 * 2000 * math.sin(math.pi / 12)
    line = [(300 * i, 400 * i) for i in range(12)]
    chance.shuffle(line)
    yield line, 5500


def main():
    with open("walks.csv", "w") as out:
        print(f"# Made by make_paths.py with Python {sys.version.split()[0]}.",
              "# Source: itertools.permutations; every order of up to nine places tried",
              "# Source: elementary geometry; eleven sides of twelve, and a straight line", "places,length",
              sep="\n", file=out)
        for places, length in walks():
            print(" ".join(repr(v) for place in places for v in place), repr(length), sep=",", file=out)
    work_of = {name: read(text) for name, text in EXAMPLES.items()}
    work_of |= {f"drawn {count}": drawn(count, count) for count in (30, 60)}
    with open("critical_paths.csv", "w") as out:
        print(f"# Made by make_paths.py with networkx {networkx.__version__}, Python {sys.version.split()[0]}.",
              "# Source: studylib.net document 8378728; worked example of seven activities, every value but free float seen",
              "# Source: wizedu.com question 717873; three durations, six slacks seen, the rest computed",
              "# Source: brainmass.com critical-path 114392; data seen, answer computed, two critical paths",
              "# Source: networkx 2.8.8; topological_sort, drawn networks",
              "example,activity,likely,before,early_start,early_finish,late_start,late_finish,total_float,free_float,length",
              sep="\n", file=out)
        for example, work in work_of.items():
            for name, length, start, finish, late_start, late_finish, free, end in times(work):
                values = (start, finish, late_start, late_finish, late_start - start, free, end)
                print(example, name, repr(length), " ".join(work[name][1]), *(round(one, 12) for one in values),
                      sep=",", file=out)


main()
