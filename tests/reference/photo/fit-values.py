"""Writes fit-values.json: maps from photo pixels to board mm found by scipy.optimize.least_squares (trust region reflective) from
many starts, and each pair's distance when it is left out. Run: python3 tests/reference/photo/fit-values.py
Made with numpy 2.4.6 and scipy 1.17.1."""
import json, os
import numpy as np
from scipy.optimize import least_squares

rng = np.random.default_rng(20240607)


def apply(matrix, points):
    h = np.c_[points, np.ones(len(points))] @ np.asarray(matrix).reshape(3, 3).T
    return h[:, :2] / h[:, 2:]


def matrix_of(kind, p):
    if kind == "similarity-top":
        return [p[0], p[1], p[2], p[1], -p[0], p[3], 0, 0, 1]
    if kind == "similarity-bottom":
        return [p[0], -p[1], p[2], p[1], p[0], p[3], 0, 0, 1]
    if kind == "affine":
        return [*p, 0, 0, 1]
    return [*p, 1]


SIZE = {"similarity-top": 4, "similarity-bottom": 4, "affine": 6, "projective": 8}


def fit(kind, photo, board, truth):
    """Pixels are divided by 1000 and the answer turned back, so that all parameters are of one size."""
    scaled = photo / 1000
    rest = lambda p: (apply(matrix_of(kind, p), scaled) - board).ravel()
    best = None
    for start in range(6):
        first = np.asarray(truth) + (rng.normal(0, 0.05 * start, SIZE[kind]) if start else 0)
        found = least_squares(rest, first, xtol=1e-15, ftol=1e-15, gtol=1e-15, x_scale="jac")
        if best is None or found.cost < best.cost:
            best = found
    back = np.diag([1e-3, 1e-3, 1])
    return (np.asarray(matrix_of(kind, best.x)).reshape(3, 3) @ back).ravel(), best


CASES = [
    ("similarity-top", 5, [48.0, 6.0, -4.0, 71.0], 0.1),
    ("similarity-bottom", 4, [-47.0, 3.0, 95.0, 66.0], 0.1),
    ("affine", 7, [48.0, 5.0, -3.0, 6.0, -46.0, 68.0], 0.15),
    ("projective", 6, [48.0, 5.0, -3.0, 6.0, -46.0, 68.0, 0.08, 0.11], 0.1),
    ("projective", 12, [60.0, 14.0, -3.0, 9.0, -80.0, 92.0, -0.12, 0.35], 0.2),
]
out = []
for kind, count, truth, noise in CASES:
    photo = np.c_[rng.uniform(50, 2000, count), rng.uniform(50, 1320, count)].round(1)
    board = (apply(matrix_of(kind, truth), photo / 1000) + rng.normal(0, noise, (count, 2))).round(3)
    matrix, found = fit(kind, photo, board, truth)
    left = []
    for one in range(count):
        keep = np.arange(count) != one
        other, _ = fit(kind, photo[keep], board[keep], found.x)
        left.append(float(np.hypot(*(apply(other, photo[one : one + 1]) - board[one])[0])))
    out.append({
        "kind": kind.split("-")[0], "side": "bottom" if kind.endswith("bottom") else "top",
        "pairs": [[*map(float, a), *map(float, b)] for a, b in zip(photo, board)],
        "matrix": [float(v / matrix[8]) for v in matrix],
        "rmsMm": float(np.sqrt(2 * found.cost / count)), "leftOutMm": left,
    })
with open(os.path.join(os.path.dirname(__file__), "fit-values.json"), "w") as file:
    json.dump(out, file, indent=1)
