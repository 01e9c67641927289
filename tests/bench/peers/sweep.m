% SPDX-License-Identifier: MIT
% The sweep of sweep.cpp in GNU Octave, all joints at once.
n = str2double(argv(){1});
tic;
u = (0:n-1) / n;
t = 4 + 8 * u; e_1 = 20 + 20 * u; e_2 = 25; d = 12; d_0 = 13.5; f_u = 290; f_ub = 800;
alpha_b = min(min(e_1 / (3 * d_0), f_ub / f_u), 1);
k_1 = min(2.8 * e_2 / d_0 - 1.7, 2.5);
bearing = k_1 * alpha_b * f_u * d .* t / 1.25;
force = (30 + 20 * u) * 1e3; pitch = 1.75; d_2 = 10.863;
t_phi = pitch / (pi * d_2); t_rho = 0.12 / cos(pi / 6);
torque = (force * d_2 / 2 * (t_phi + t_rho) / (1 - t_phi * t_rho) + force * (16.6 + 13.5) / 4 * 0.14) * 1e-3;
x = [-60; 60; -60; 60]; y = [-40; -40; 40; 40];
polar = sum(x .^ 2 + y .^ 2);
moment = (500 + 1500 * u) * 1e3;
greatest = max(hypot(3e3 / 4 - y * moment / polar, 10e3 / 4 + x * moment / polar));
seconds = toc;
printf("%.9g %.9g %.9g %.6g\n", mean(bearing), mean(torque), mean(greatest), seconds / n * 1e6);
