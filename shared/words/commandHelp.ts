/** What the command line says of itself, by command. Plain ASCII, at most 80 columns. */
export const COMMAND_HELP = {
  all: `yardhark: from short clips of a ground microphone to a place to dig

  yardhark locate FOLDER        where the leak is, and why
  yardhark inspect FILE...      what single clips say
  yardhark synth --out FOLDER   an invented job to try things on

Start here
  yardhark synth --out try
  yardhark locate try
  (in the project's own folder with npx before it: npx yardhark locate try)

Your own clips
  One WAV file for each point, all in one folder. Name them by their points,
  1.wav 2.wav 3.wav ... (2-on.wav and 2-off.wav with the air on and off), and
  say how far apart the points are:
  yardhark locate my-clips --spacing 1.5

yardhark locate --help tells more, as do inspect and synth.

Exit status
  0    an answer was reached, whatever it is; a bad clip is set aside and named
  2    the call or a file must be mended first; one line on stderr says how
  130  interrupted
  1    a fault of this program; please report it
`,
  locate: `yardhark locate FOLDER: where the leak is, and why

  --json            one JSON object instead of text
  --spacing M       metres from one point to the next  } only without a
  --spacing-ft FT   the same in feet                   } sweep.csv in the
  --start M         where the lowest number lies (0)   } folder
  --start-ft FT     the same in feet                   }
  --depth M         cover over the pipe, in metres, where line.json tells none
                    for a stretch
  --depth-ft FT     the same in feet
  --feet            show feet instead of metres (text only)

Examples
  yardhark locate demo-audio
  yardhark locate my-clips --spacing 1.5 --depth 0.4
  yardhark locate my-clips --spacing-ft 5 --feet
  yardhark locate my-clips --json > answer.json

In the folder
  *.wav       16 bit, 24 bit, float ...; 8 to 192 kHz
  sweep.csv   columns point, along_m (or along_ft), file; more if you like:
              air (on or off), take, sweep, offset_m, time, contact, air_kpa,
              processing (echo, noise, gain that the phone left on),
              device_hz, ended_by, note
  line.json   all optional: length_m, depth_m, air_inlet_m, vertices,
              route_sd_m, stretches, fittings, noises, pipe
  Without sweep.csv: clips named 6.wav, 6-on.wav, 6-off.wav or 6-on-take2.wav

Verdicts
  located         dig there; the window says how sure
  unsure          the best candidate, and what would make it surer
  no leak heard   which does not mean that there is none

Exit status: 0 for any of these, 2 when something must be mended first.
`,
  inspect: `yardhark inspect FILE...: what single clips say

  --csv    one row for each clip, every number
  --json   a list with one object for each clip, every number

Examples
  yardhark inspect 06-on.wav
  yardhark inspect my-clips/*.wav --csv > clips.csv

A clip that cannot be read is named and the others are shown. Exit status 0 when
any clip could be read, 2 when none could.
`,
  synth: `yardhark synth --out FOLDER: an invented job to try things on

  --out FOLDER    where to write it; made when it is not there
  --family NAME   a test sweep of this kind instead of the demo job
  --seed TEXT     another sweep of the same kind (1)
  --list          names of the kinds
  --force         write into a folder that is not empty

Examples
  yardhark synth --out try
  yardhark synth --family bends-and-offsets --seed 7 --out bent
  yardhark synth --list

The same kind and seed give the same files, byte for byte. labels.csv has the
truth. Nothing in it was recorded anywhere.
`,
} as const
