# SPDX-License-Identifier: MIT
"""The sweep of sweep.cpp in NumPy, all joints at once."""
import math
import sys
import time

import numpy as np

n = int(sys.argv[1])
begin = time.perf_counter()
u = np.arange(n) / n
t, e_1, e_2, d, d_0, f_u, f_ub = 4 + 8 * u, 20 + 20 * u, 25.0, 12.0, 13.5, 290.0, 800.0
alpha_b = np.minimum(np.minimum(e_1 / (3 * d_0), f_ub / f_u), 1.0)
k_1 = min(2.8 * e_2 / d_0 - 1.7, 2.5)
bearing = k_1 * alpha_b * f_u * d * t / 1.25
force, pitch, d_2 = (30 + 20 * u) * 1e3, 1.75, 10.863
t_phi, t_rho = pitch / (math.pi * d_2), 0.12 / math.cos(math.pi / 6)
torque = (force * d_2 / 2 * (t_phi + t_rho) / (1 - t_phi * t_rho) + force * (16.6 + 13.5) / 4 * 0.14) * 1e-3
x, y = np.array([-60.0, 60, -60, 60]), np.array([-40.0, -40, 40, 40])
polar = np.sum(x * x + y * y)
moment = ((500 + 1500 * u) * 1e3)[:, None]
greatest = np.hypot(3e3 / 4 - moment * y / polar, 10e3 / 4 + moment * x / polar).max(axis=1)
sums = bearing.mean(), torque.mean(), greatest.mean()
print(*(f"{s:.9g}" for s in sums), f"{(time.perf_counter() - begin) / n * 1e6:.6g}")
