#!/usr/bin/env python3
"""A second computation of the time to fill an empty line, for line_at_rest_test.cpp; prints one row per case.

A pump (rise H0 - a q^2) fills a line and a hose of round pipe. At every volume the flow is found by bisection from
Colebrook's law, iterated in its own form; the time is the integral of dV/q by Simpson's rule in Richardson's extrapolation
(Romberg), stretch by stretch. Shares no code and no constants with the program but the laws themselves.
"""
import math

GRAVITY = 9.80665


def friction(reynolds, relative):
    if reynolds < 2000.0:
        return 64.0 / reynolds
    f = 0.02
    for _ in range(200):
        f = (-2.0 * math.log10(relative / 3.7 + 2.51 / (reynolds * math.sqrt(f)))) ** -2
    return f


class Stretch:
    def __init__(self, length, bore, roughness, k, start, end):
        self.length, self.bore, self.roughness, self.k = length, bore, roughness, k
        self.start, self.end = start, end
        self.area = math.pi * bore * bore / 4.0
        self.volume = self.area * length

    def loss(self, q, density, viscosity):
        v = q / self.area
        f = friction(density * v * self.bore / viscosity, self.roughness / self.bore)
        return (f * self.length / self.bore + self.k) * density * v * v / 2.0


def flow(stretches, filled, pump, density, viscosity, surface):
    """Flow at which the pump's rise is what the filled part takes."""
    shutoff, per_square = pump
    passed, front, parts = 0.0, surface, []
    for s in stretches:
        share = min(max((filled - passed) / s.volume, 0.0), 1.0)
        parts.append((share, s))
        front = s.start + share * (s.end - s.start)
        passed += s.volume
        if passed > filled:
            break
    low, high = 0.0, 1.0
    for _ in range(200):
        q = 0.5 * (low + high)
        need = density * GRAVITY * (front - surface) + sum(share * s.loss(q, density, viscosity) for share, s in parts)
        if shutoff - per_square * q * q > need:
            low = q
        else:
            high = q
    return 0.5 * (low + high)


def integral(f, a, b, steps=64):
    def simpson(n):
        h = (b - a) / n
        return h / 3.0 * sum((1 if i in (0, n) else 4 if i % 2 else 2) * f(a + i * h) for i in range(n + 1))
    coarse, fine = simpson(steps), simpson(2 * steps)
    return fine + (fine - coarse) / 15.0


def time_to_fill(stretches, pump, density, viscosity, surface, restricted=None, opening=0.0):
    def q(v):
        return flow(stretches, v, pump, density, viscosity, surface)
    start = 0.0
    time = 0.0
    if restricted is not None:  # the restricted flow is far below what the pump gives
        start, time = restricted * opening, opening
    passed = 0.0
    for s in stretches:
        a, b = max(passed, start), passed + s.volume
        if b > a:
            time += integral(lambda v: 1.0 / q(min(max(v, a + 1e-12), b - 1e-12)), a, b)
        passed = b
    return time


def main():
    line = Stretch(60.0, 0.0525, 4.5e-5, 4.0, -1.0, -1.0)
    riser = Stretch(1.2, 0.0409, 4.5e-5, 3.0, -1.0, 0.2)
    hose = Stretch(3.5, 0.019, 1.5e-6, 0.0, 0.2, 0.9)
    case = [line, riser, hose]
    pump = (2.0e5, 4.0e9)
    for name, restricted, opening in (("open", None, 0.0), ("detector", 2.0e-4, 4.0)):
        print(name, f"{time_to_fill(case, pump, 745.0, 6e-4, -2.5, restricted, opening):.9f}")


if __name__ == "__main__":
    main()
