"""Makes spectrumReference.json, SciPy's spectra of a signal that both sides work out from the same formula, and
demoSpectrumReference.json, SciPy's spectra of a clip of demo-audio as SciPy reads it.

Run with Debian's SciPy from the top of the repository, again whenever the demo clip is made anew:

    /usr/bin/python3 tests/reference/makeSpectrumReference.py
"""

import datetime
import hashlib
import json
import math
import pathlib
import platform

import numpy as np
import scipy
from scipy import signal
from scipy.io import wavfile

COMMAND = "/usr/bin/python3 tests/reference/makeSpectrumReference.py"
DEMO_CLIP = "demo-audio/07-on.wav"  # 16-bit, one of the two points nearest to the invented leak
RATE_HZ = 16000
# Segments of 1366 samples fit 78 times at half overlap, segments of 8 * 1366 samples 9 times, both without a rest.
SAMPLE_COUNT = 8 * 1366 * 5
# start s, pitch Hz, decay 1/s, amplitude
RINGS = [
    (0.20, 640.0, 40.0, 0.30),
    (0.71, 1131.0, 85.0, 0.20),
    (1.10, 78.0, 12.0, 0.25),
    (1.62, 2310.0, 190.0, 0.25),
    (2.05, 447.0, 30.0, 0.15),
    (2.90, 5200.0, 300.0, 0.10),
]
CONSTANT = 0.05


def make_signal():
    """Uniform noise from a 32-bit linear congruential generator, a constant, and decaying tones."""
    state = 12345
    x = np.empty(SAMPLE_COUNT)
    for n in range(SAMPLE_COUNT):
        state = (1664525 * state + 1013904223) & 0xFFFFFFFF
        x[n] = CONSTANT + 0.1 * (state / 4294967296 - 0.5)
    for start_s, pitch_hz, decay_per_s, amplitude in RINGS:
        first = round(start_s * RATE_HZ)
        for n in range(first, SAMPLE_COUNT):
            t = (n - first) / RATE_HZ
            x[n] += amplitude * math.exp(-decay_per_s * t) * math.sin(2 * math.pi * pitch_hz * t)
    return x


def welch_case(x, rate_hz, **settings):
    frequencies, density = signal.welch(x, rate_hz, scaling="density", **settings)
    return {"settings": settings, "bin_width_hz": frequencies[1], "density": density.tolist()}


def spectrogram_case(x, rate_hz, every, **settings):
    frequencies, times, density = signal.spectrogram(x, rate_hz, scaling="density", mode="psd", **settings)
    return {
        "settings": settings,
        "bin_width_hz": frequencies[1],
        "times_s": times.tolist(),
        "columns": [
            {"column": c, "level_db_per_hz": (10 * np.log10(density[:, c])).tolist()}
            for c in range(0, len(times), every)
        ],
    }


def band_level(x, index, nperseg, nfft):
    """Exact base-ten third-octave band of this index (0 is 1 kHz), bins at its edges shared in proportion."""
    g = 10 ** 0.3
    middle = 1000 * g ** (index / 3)
    lower, upper = middle * g ** (-1 / 6), middle * g ** (1 / 6)
    frequencies, density = signal.welch(
        x, RATE_HZ, window="hann", nperseg=nperseg, noverlap=nperseg // 2, nfft=nfft, detrend=False
    )
    width = frequencies[1]
    inside = np.minimum(frequencies + width / 2, upper) - np.maximum(frequencies - width / 2, lower)
    return {"mid_hz": middle, "level_dbfs": 10 * math.log10(np.sum(density * np.maximum(inside, 0)))}


def provenance():
    return {
        "versions": {"scipy": scipy.__version__, "numpy": np.__version__, "python": platform.python_version()},
        "command": COMMAND,
        "date": datetime.date.today().isoformat(),
    }


def write(name, reference):
    path = pathlib.Path(__file__).with_name(name)
    path.write_text(json.dumps(reference, indent=1) + "\n")
    print(path.name, path.stat().st_size, "bytes")


def write_formula_reference():
    x = make_signal()
    centred = x - x.mean()
    low = [band_level(centred, index, 8 * 1366, 16384) for index in range(-12, -3)]
    high = [band_level(x, index, 1366, 2048) for index in range(-3, 9)]
    names = {"hann": "hann", "hamming": "hamming", "blackman": "blackman", "blackman-harris": "blackmanharris"}
    reference = {
        "what": "SciPy's Welch density, spectrogram, third-octave levels and windows of a signal made by formula",
        **provenance(),
        "signal": {
            "sample_rate_hz": RATE_HZ,
            "sample_count": SAMPLE_COUNT,
            "constant": CONSTANT,
            "rings": RINGS,
            "first_samples": x[:4].tolist(),
            "mean_square": float(np.mean(x**2)),
        },
        "welch": [
            welch_case(x, RATE_HZ, window="hann", nperseg=1024, noverlap=512, nfft=1024, detrend="constant"),
            welch_case(x, RATE_HZ, window="blackman", nperseg=900, noverlap=675, nfft=1024, detrend=False),
        ],
        "spectrogram": spectrogram_case(
            x, RATE_HZ, 40, window="hann", nperseg=512, noverlap=384, nfft=512, detrend="constant"
        ),
        "third_octaves": low + high,
        "windows_of_16": {ours: signal.get_window(theirs, 16, fftbins=True).tolist() for ours, theirs in names.items()},
    }
    write("spectrumReference.json", reference)


def write_demo_reference():
    path = pathlib.Path(__file__).parents[2] / DEMO_CLIP
    rate_hz, counts = wavfile.read(path)
    x = counts / 32768
    reference = {
        "what": "SciPy's Welch density and spectrogram of a clip of demo-audio, read by SciPy",
        **provenance(),
        "clip": {
            "file": DEMO_CLIP,
            "sha256": hashlib.sha256(path.read_bytes()).hexdigest(),
            "sample_rate_hz": rate_hz,
            "sample_count": len(x),
            "mean_square": float(np.mean(x**2)),
        },
        "welch": [welch_case(x, rate_hz, window="hann", nperseg=1024, noverlap=512, nfft=1024, detrend="constant")],
        "spectrogram": spectrogram_case(
            x, rate_hz, 100, window="hann", nperseg=512, noverlap=384, nfft=512, detrend="constant"
        ),
    }
    write("demoSpectrumReference.json", reference)


def main():
    write_formula_reference()
    write_demo_reference()


if __name__ == "__main__":
    main()
