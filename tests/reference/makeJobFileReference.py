"""What other programs say of a job file; written to jobFileReference.json.

    npx tsx tests/support/makePackedJob.ts job.zip
    python3 tests/reference/makeJobFileReference.py job.zip

Needs sox and ffmpeg (Debian).
"""

import hashlib
import json
import pathlib
import subprocess
import sys
import tempfile
import zipfile


def said(*command):
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    return done.stdout + done.stderr


def first_line(*command):
    return said(*command).splitlines()[0]


path = sys.argv[1]
with zipfile.ZipFile(path) as archive, tempfile.TemporaryDirectory() as folder:
    names = archive.namelist()
    damaged = archive.testzip()
    archive.extractall(folder)
    base = pathlib.Path(folder) / names[0].split("/")[0]
    clips = {}
    for clip in sorted(base.glob("data/clips/*.wav")):
        probe = json.loads(
            said("ffprobe", "-v", "error", "-show_format", "-show_streams", "-of", "json", str(clip))
        )
        samples = subprocess.run(
            ["sox", str(clip), "-t", "raw", "-"], capture_output=True, check=True
        ).stdout
        decoded = subprocess.run(
            ["ffmpeg", "-v", "error", "-i", str(clip), "-f", "s16le", "-"],
            capture_output=True,
            check=True,
        ).stdout
        clips[clip.name] = {
            "sox_samples": int(said("soxi", "-s", str(clip))),
            "sox_rate_hz": int(said("soxi", "-r", str(clip))),
            "sox_sha256": hashlib.sha256(samples).hexdigest(),
            "ffmpeg_sha256": hashlib.sha256(decoded).hexdigest(),
            "ffmpeg_tags": probe["format"].get("tags", {}),
            "ffmpeg_codec": probe["streams"][0]["codec_name"],
        }
    result = {
        "made_by": [
            f"Python {sys.version.split()[0]} zipfile",
            first_line("sox", "--version"),
            first_line("ffmpeg", "-version").split(" Copyright")[0],
        ],
        "zip_sha256": hashlib.sha256(pathlib.Path(path).read_bytes()).hexdigest(),
        "zipfile_names": names,
        "zipfile_damaged": damaged,
        "clips": clips,
    }

out = pathlib.Path(__file__).with_name("jobFileReference.json")
out.write_text(json.dumps(result, indent=2) + "\n")
