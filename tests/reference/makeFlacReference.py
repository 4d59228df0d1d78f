"""What FLAC's own program makes of small sounds, and of our streams; written to flacReference.json.

    python3 tests/reference/makeFlacReference.py

Needs flac (Debian). The sounds are invented here: tones, noise and silence.
"""

import base64
import hashlib
import json
import math
import pathlib
import struct
import subprocess
import tempfile

HERE = pathlib.Path(__file__).parent
LEVELS = ["-0", "-5", "-8", "-8 -e -p"]


def noise(seed):
    state = seed
    while True:
        state = (1103515245 * state + 12345) % 2**31
        yield state / 2**30 - 1


def wav(bits, channels, frames, step=1, extra=b""):
    source = noise(bits + channels)
    top = 2 ** (bits - 1) - 1
    body = b""
    for n in range(frames):
        for channel in range(channels):
            tone = 0.4 * math.sin(n / (7 + channel)) if n < frames * 3 // 4 else 0
            quiet = 0.05 * next(source) if n < frames * 7 // 8 else 0
            value = int((tone + quiet) * top / step) * step
            if bits == 8:
                body += struct.pack("<B", value + 128)
            else:
                body += struct.pack("<i", value)[: bits // 8]
    head = struct.pack("<HHIIHH", 1, channels, 8000, 8000 * channels * bits // 8, channels * bits // 8, bits)
    chunks = b"fmt " + struct.pack("<I", 16) + head + b"data" + struct.pack("<I", len(body)) + body + extra
    return b"RIFF" + struct.pack("<I", 4 + len(chunks)) + b"WAVE" + chunks


SOUNDS = {
    "16 bit stereo": wav(16, 2, 1500),
    "24 bit": wav(24, 1, 900),
    "8 bit": wav(8, 1, 1000),
    "16 bit in steps of 8": wav(16, 1, 700, step=8),
    "16 bit with another chunk": wav(16, 1, 5000, extra=b"note" + struct.pack("<I", 4) + b"hole"),
}

result = {
    "made_by": subprocess.run(["flac", "--version"], capture_output=True, text=True, check=True).stdout.strip(),
    "sounds": {},
}
with tempfile.TemporaryDirectory() as folder:
    at = pathlib.Path(folder)
    for name, sound in SOUNDS.items():
        (at / "in.wav").write_bytes(sound)
        theirs = {}
        for level in LEVELS:
            command = ["flac", "-s", "-f", *level.split(), "--no-padding", "--keep-foreign-metadata"]
            subprocess.run([*command, "in.wav", "-o", "theirs.flac"], cwd=at, check=True, capture_output=True)
            theirs[level] = base64.b64encode((at / "theirs.flac").read_bytes()).decode()
        root = HERE.parent.parent
        subprocess.run(["npx", "tsx", "tests/support/makeFlac.ts", at / "in.wav", at / "ours.flac"], cwd=root, check=True)
        back = {}
        for stream in ["ours", "theirs"]:
            command = ["flac", "-s", "-f", "-d", "--keep-foreign-metadata", f"{stream}.flac", "-o", "back.wav"]
            subprocess.run(command, cwd=at, check=True, capture_output=True)
            back[stream] = (at / "back.wav").read_bytes()
        result["sounds"][name] = {
            "wav": base64.b64encode(sound).decode(),
            "theirs": theirs,
            "ours_sha256": hashlib.sha256((at / "ours.flac").read_bytes()).hexdigest(),
            # Of 24 bits its program writes another header than it read, for its own streams as for ours.
            "back_is_the_same": back["ours"] == sound,
            "back_is_as_theirs": back["ours"] == back["theirs"],
        }

(HERE / "flacReference.json").write_text(json.dumps(result, indent=1) + "\n")
