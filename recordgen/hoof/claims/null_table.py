"""Tell how often chance alone reaches a log ratio: a simulated table by number of readings, stored so that bytes stay.

`python -m tests.null_table` writes the rows anew. The table is that of even gaps and even errors; uneven ones differ
from it by little, which the tests hold against permutations and against uneven horses.
"""

from __future__ import annotations

from functools import cache

import numpy as np

from recordgen.hoof.claims.statistic import LEAST_LOG_RATIO, Floats

# One row for each of these numbers of readings; between them the logarithm of the chance is interpolated.
READINGS = (2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16, 20, 25, 32, 40, 60, 100)
# One column for each of these log ratios: minus log10 of the chance that a horse without a change reaches it.
LOG_RATIOS = (-1.4, -1.3, -1.2, -1.0, -0.75, -0.5, -0.25, 0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 11.0, 15.0)
ROWS = """
0.071 0.208 0.301 0.454 0.628 0.785 0.938 1.085 1.359 1.630 1.892 2.153 2.661 3.160 4.145 5.113 6.540 8.450
0.020 0.131 0.231 0.400 0.589 0.757 0.911 1.061 1.349 1.621 1.888 2.151 2.671 3.181 4.174 5.135 6.584 8.489
0.009 0.105 0.203 0.380 0.570 0.741 0.899 1.050 1.343 1.618 1.891 2.153 2.669 3.177 4.169 5.143 6.593 8.496
0.008 0.092 0.191 0.371 0.562 0.737 0.896 1.048 1.339 1.619 1.887 2.148 2.672 3.176 4.181 5.145 6.600 8.489
0.006 0.080 0.178 0.358 0.550 0.726 0.888 1.041 1.334 1.612 1.888 2.161 2.673 3.182 4.177 5.149 6.596 8.500
0.002 0.070 0.166 0.347 0.547 0.722 0.888 1.049 1.345 1.619 1.889 2.160 2.676 3.188 4.177 5.157 6.601 8.507
0.000 0.062 0.160 0.343 0.542 0.723 0.883 1.039 1.340 1.622 1.895 2.167 2.684 3.189 4.179 5.164 6.606 8.515
0.000 0.061 0.160 0.346 0.545 0.720 0.886 1.040 1.341 1.624 1.902 2.164 2.687 3.191 4.181 5.157 6.602 8.521
0.001 0.057 0.155 0.336 0.537 0.716 0.879 1.038 1.334 1.615 1.892 2.165 2.687 3.187 4.183 5.150 6.612 8.529
0.001 0.052 0.148 0.335 0.529 0.707 0.879 1.032 1.330 1.622 1.884 2.156 2.684 3.194 4.172 5.164 6.618 8.519
0.001 0.052 0.144 0.328 0.528 0.705 0.872 1.031 1.335 1.620 1.893 2.154 2.676 3.192 4.178 5.167 6.624 8.531
0.000 0.047 0.140 0.325 0.528 0.704 0.875 1.034 1.337 1.620 1.892 2.163 2.680 3.189 4.184 5.164 6.625 8.526
0.000 0.043 0.136 0.321 0.524 0.704 0.867 1.031 1.330 1.618 1.893 2.163 2.680 3.195 4.196 5.164 6.613 8.538
0.000 0.038 0.129 0.311 0.519 0.700 0.868 1.033 1.333 1.627 1.909 2.166 2.688 3.203 4.196 5.163 6.620 8.521
0.000 0.036 0.124 0.311 0.515 0.703 0.871 1.035 1.337 1.621 1.901 2.163 2.691 3.199 4.196 5.178 6.624 8.526
0.001 0.034 0.123 0.307 0.508 0.691 0.865 1.024 1.327 1.613 1.895 2.170 2.693 3.201 4.189 5.165 6.631 8.537
0.000 0.030 0.115 0.300 0.511 0.699 0.866 1.023 1.330 1.620 1.897 2.166 2.691 3.195 4.198 5.180 6.632 8.542
0.000 0.031 0.115 0.298 0.504 0.689 0.863 1.027 1.333 1.618 1.895 2.161 2.696 3.207 4.196 5.182 6.612 8.539
"""


def chance(log_ratio: Floats, readings: int) -> Floats:
    """The probability that a series without a change reaches a log ratio, (...): 1 for fewer than two readings.

    readings: how many could show a change; beyond the table its last row holds. Beyond the last column the chance falls
    as its bound does, by the ratio itself.
    """
    found = np.asarray(log_ratio, dtype=float)
    if readings < 2:
        return np.ones(found.shape)
    beyond = np.maximum(found - LOG_RATIOS[-1], 0) / np.log(10)
    known = np.interp(found, (LEAST_LOG_RATIO, *LOG_RATIOS), np.concatenate([[0.0], _row(readings)]))
    return np.asarray(10 ** -(known + beyond))


@cache
def _row(readings: int) -> Floats:
    table = np.array([line.split() for line in ROWS.split("\n") if line], dtype=float)
    return np.array([np.interp(readings, READINGS, column) for column in table.T])
