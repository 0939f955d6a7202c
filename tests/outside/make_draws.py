#!/usr/bin/python3
"""Draws of the 64-bit Mersenne twister, by its authors' recurrence in plain Python, into draws.csv.

Nishimura and Matsumoto 2000 and 2004; the C++ standard [rand.predef] fixes the 10,000th number of
the default seed. The tests read the committed table and need no Python.
"""
import math

MASK = (1 << 64) - 1


class Twister:
    def __init__(self, seed):
        self.state = [seed]
        for i in range(1, 312):
            last = self.state[-1]
            self.state.append((6364136223846793005 * (last ^ (last >> 62)) + i) & MASK)
        self.place = 312

    def bits(self):
        if self.place == 312:
            for i in range(312):
                x = (self.state[i] & 0xFFFFFFFF80000000) | (self.state[(i + 1) % 312] & 0x7FFFFFFF)
                self.state[i] = self.state[(i + 156) % 312] ^ (x >> 1) ^ (0xB5026F5AA96619E9 if x & 1 else 0)
            self.place = 0
        x = self.state[self.place]
        self.place += 1
        x ^= (x >> 29) & 0x5555555555555555
        x ^= (x << 17) & 0x71D67FFFEDA60000
        x ^= (x << 37) & 0xFFF7EEE000000000
        return x ^ (x >> 43)

    def unit(self):
        return (self.bits() >> 11) * 2.0 ** -53

    def below(self, count):  # numbers under 2^64 mod count are thrown away
        while True:
            drawn = self.bits()
            if drawn >= 2 ** 64 % count:
                return drawn % count

    def normals(self, count):  # Box and Muller 1958, cosine first
        out = []
        while len(out) < count:
            radius = math.sqrt(-2 * math.log(1 - self.unit()))
            turn = 2 * math.pi * self.unit()
            out += [radius * math.cos(turn), radius * math.sin(turn)]
        return out[:count]

    def triangular(self, low, likely, high):  # by the inverse of the distribution
        drawn = self.unit()
        if drawn < (likely - low) / (high - low):
            return low + math.sqrt(drawn * (high - low) * (likely - low))
        return high - math.sqrt((1 - drawn) * (high - low) * (high - likely))

    def poisson(self, mean):
        if mean >= 30:
            return self.poisson_by_rejection(mean)
        # As many exponential gaps as fit.
        count, time = 0, -math.log(1 - self.unit())
        while time < mean:
            count += 1
            time -= math.log(1 - self.unit())
        return count

    def poisson_by_rejection(self, mean):  # Hoermann 1993, PTRS
        b = 0.931 + 2.53 * math.sqrt(mean)
        a = -0.059 + 0.02483 * b
        while True:
            u, v = self.unit() - 0.5, 1 - self.unit()
            edge = 0.5 - abs(u)
            k = math.floor((2 * a / edge + b) * u + mean + 0.43)
            if edge >= 0.07 and v <= 0.9277 - 3.6224 / (b - 2):
                return k
            if k < 0 or (edge < 0.013 and v > edge):
                continue
            weight = math.log(v * (1.1239 + 1.1328 / (b - 3.4)) / (a / edge ** 2 + b))
            if weight <= k * math.log(mean) - mean - math.lgamma(k + 1):
                return k

    def shuffled(self, count):  # Fisher and Yates, from the end
        items = list(range(count))
        for i in range(count, 1, -1):
            other = self.below(i)
            items[i - 1], items[other] = items[other], items[i - 1]
        return items


def main():
    with open("draws.csv", "w") as out:
        print("# Made by make_draws.py.",
              "# Source: Nishimura and Matsumoto 2000; mt19937-64, the recurrence in plain Python",
              "# Source: Hoermann 1993; transformed rejection PTRS for Poisson counts, constants from memory",
              "# Source: C++ standard, rand.predef; the 10,000th number of seed 5489 is 9981545732273789042",
              "what,seed,argument,values", sep="\n", file=out)
        row = lambda *cells: print(*cells, sep=",", file=out)
        text = lambda values: " ".join(map(repr, values))
        ten_thousand = Twister(5489)
        for _ in range(9999):
            ten_thousand.bits()
        row("bits after 9999", 5489, "", ten_thousand.bits())
        for seed in (1, 42, MASK):
            row("bits", seed, "", text([t.bits() for t in [Twister(seed)] for _ in range(8)]))
            row("unit", seed, "", text([t.unit() for t in [Twister(seed)] for _ in range(8)]))
            for count in (2, 6, 52, 1000003, 3 << 61):
                row("below", seed, count, text([t.below(count) for t in [Twister(seed)] for _ in range(12)]))
            row("shuffle", seed, 20, text(Twister(seed).shuffled(20)))
            row("normal", seed, "", text(Twister(seed).normals(7)))
            row("triangular", seed, "2 5 11", text([t.triangular(2, 5, 11) for t in [Twister(seed)] for _ in range(8)]))
            row("poisson", seed, 3.5, text([t.poisson(3.5) for t in [Twister(seed)] for _ in range(12)]))
            row("poisson", seed, 120, text([t.poisson(120) for t in [Twister(seed)] for _ in range(20)]))
            row("poisson", seed, 29.5, text([t.poisson(29.5) for t in [Twister(seed)] for _ in range(6)]))


main()
