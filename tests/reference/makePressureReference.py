"""Makes pressureReference.json: ordinary regression of gauge readings with its 95 % interval, and tails of the normal
distribution, by SciPy.

Run with Debian's SciPy from the top of the repository:

    /usr/bin/python3 tests/reference/makePressureReference.py
"""

import datetime
import json
import pathlib
import platform

import numpy as np
import scipy
from scipy import stats

COMMAND = "/usr/bin/python3 tests/reference/makePressureReference.py"


def regression(times_s, values):
    fit = stats.linregress(times_s, values)
    reach = stats.t.ppf(0.975, len(times_s) - 2) * fit.stderr
    return {
        "times_s": list(times_s),
        "values": list(values),
        "slope_per_s": fit.slope,
        "slope_low_per_s": fit.slope - reach,
        "slope_high_per_s": fit.slope + reach,
        "intercept": fit.intercept,
    }


def main():
    random = np.random.default_rng(20240611)
    times_s = [float(t) for t in np.arange(0, 601, 30)]
    # A gauge that is far finer than its noise, so that rounding does not matter: psi, to a ten-thousandth.
    fine = [round(11.0 - 0.0004 * t + float(random.normal(0, 0.05)), 4) for t in times_s]
    short = [round(10.5 - 0.001 * t + float(random.normal(0, 0.05)), 4) for t in times_s[:8]]
    tails = [-6.0, -3.0, -1.0, -0.2, 0.0, 0.3, 1.0, 2.0, 3.5, 5.0, 6.0]
    out = {
        "what": "linear regression with its 95 % interval, upper tails of the standard normal",
        "version": f"SciPy {scipy.__version__}, NumPy {np.__version__}, Python {platform.python_version()}",
        "command": COMMAND,
        "date": datetime.date.today().isoformat(),
        "regressions": [regression(times_s, fine), regression(times_s[:8], short)],
        "upper_tails": [{"z": z, "tail": float(stats.norm.sf(z))} for z in tails],
    }
    path = pathlib.Path("tests/reference/pressureReference.json")
    path.write_text(json.dumps(out, indent=2) + "\n")


if __name__ == "__main__":
    main()
