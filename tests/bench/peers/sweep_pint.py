# SPDX-License-Identifier: MIT
"""The sweep of sweep.cpp with units by Pint, one joint after another."""
import math
import sys
import time

import pint

n = int(sys.argv[1])
unit = pint.UnitRegistry()
mm, kN, MPa, Nm = unit.mm, unit.kN, unit.MPa, unit.newton * unit.metre
bolts = [(x * mm, y * mm) for x, y in ((-60, -40), (60, -40), (-60, 40), (60, 40))]
polar = sum((x * x + y * y for x, y in bolts), 0 * mm**2)
bearing, torque, greatest = 0 * kN, 0 * Nm, 0 * kN
begin = time.perf_counter()
for i in range(n):
    u = i / n
    t, e_1, e_2, d, d_0, f_u, f_ub = (4 + 8 * u) * mm, (20 + 20 * u) * mm, 25 * mm, 12 * mm, 13.5 * mm, 290 * MPa, 800 * MPa
    alpha_b = min((e_1 / (3 * d_0)).to("").magnitude, (f_ub / f_u).to("").magnitude, 1.0)
    k_1 = min((2.8 * e_2 / d_0).to("").magnitude - 1.7, 2.5)
    bearing += k_1 * alpha_b * f_u * d * t / 1.25
    force, pitch, d_2 = (30 + 20 * u) * kN, 1.75 * mm, 10.863 * mm
    t_phi, t_rho = (pitch / (math.pi * d_2)).to("").magnitude, 0.12 / math.cos(math.pi / 6)
    torque += force * d_2 / 2 * (t_phi + t_rho) / (1 - t_phi * t_rho) + force * (16.6 * mm + 13.5 * mm) / 4 * 0.14
    moment = (500 + 1500 * u) * Nm
    greatest += max((((3 * kN / 4 - moment * y / polar) ** 2 + (10 * kN / 4 + moment * x / polar) ** 2) ** 0.5 for x, y in bolts))
seconds = time.perf_counter() - begin
sums = (bearing / n).to("newton").magnitude, (torque / n).to("newton*metre").magnitude, (greatest / n).to("newton").magnitude
print(*(f"{s:.9g}" for s in sums), f"{seconds / n * 1e6:.6g}")
