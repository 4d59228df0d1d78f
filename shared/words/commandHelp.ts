/** What the command line says of itself, by command. Plain ASCII, at most 80 columns. */
export const COMMAND_HELP = {
  all: `yardhark: from short clips of a ground microphone to a place to dig

  yardhark locate FOLDER        where the leak is, and why
  yardhark inspect FILE...      what single clips say
  yardhark synth --out FOLDER   an invented job to try things on
  yardhark pack FOLDER          a folder of clips as a job file, to be shared
  yardhark open FILE            a job file as folders of clips
  yardhark verify FILE          whether a job file is whole, and who signed what
  yardhark merge FILE FILE...   copies of a job, and opinions of it, as one
  yardhark train FOLDER...      a detector from your own labelled clips
  yardhark score MODEL FILE...  what a detector says of single clips
  yardhark evaluate MODEL FOLDER...
                                what a detector is worth on labelled clips
  yardhark report JOB           what the customer is told, to read or to print

Start here
  yardhark synth --out try
  yardhark locate try
  (in the project's own folder with npx before it: npx yardhark locate try)

Your own clips
  One WAV file for each point, all in one folder. Name them by their points,
  1.wav 2.wav 3.wav ... (2-on.wav and 2-off.wav with the air on and off), and
  say how far apart the points are:
  yardhark locate my-clips --spacing 1.5

yardhark locate --help tells more, as do the others.

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
  --detector MODEL  ask a trained detector as well; the answer says what it
                    weighed (yardhark train --help)
  --device NAME     what recorded the clips, as in the labels of its training
  --cache FOLDER    where clips measured for the detector are kept

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
  pack: `yardhark pack FOLDER --out FILE: a folder of clips as a job file

  --out FILE           the file to write, as job.zip
  --points 5,6,7       only the clips of these points
  --without-customer   leave names, notes and photos out
  --flac               clips as FLAC: about half, and the same sound
  --name TEXT          what the job is called (the folder's name)
  --spacing M          as for locate, for a folder without sweep.csv
  --spacing-ft FT
  --start M
  --start-ft FT
  --force              write over a file that is there

Examples
  yardhark pack demo-audio --out demo.zip
  yardhark pack demo.zip --points 6,7,8 --without-customer --out some.zip

Instead of a folder a job file may be named, to share part of it. The same
folder gives the same file, byte for byte. Nothing is sent anywhere.
`,
  open: `yardhark open FILE --out FOLDER: a job file as folders of clips

  --out FOLDER   where to write; made when it is not there
  --force        write into a folder that is not empty

Examples
  yardhark open job.zip --out job
  yardhark locate job/line

In the folder: job.json, opinions.json when there are any, and a folder for
each line that locate reads. Every file is checked; what is damaged is named
and left out.
`,
  verify: `yardhark verify FILE: whether a job file is whole, and who signed what

Example
  yardhark verify job.zip

Checks every file by its digest and every opinion by its device's signature.
Exit status 0 when the file is whole, 2 when it is not.
`,
  merge: `yardhark merge FILE FILE... --out FILE: copies of a job as one

  --out FILE   the file to write, as merged.zip
  --force      write over a file that is there

Examples
  yardhark merge job.zip opinion.json --out merged.zip
  yardhark merge phone.zip desk.zip --out merged.zip

Nothing is overwritten: where two copies tell something else, the first one's
is shown and the other's is kept beside it. Merging again changes nothing.
`,
  train: `yardhark train FOLDER...: a detector from your own labelled clips

  --out FILE      where to write the model; its card goes beside it
  --name TEXT     what to call it
  --about TEXT    whose clips these are, where recorded, who allowed it
  --miss PERCENT  share of the leaks it may miss (5): sets where it says leak
  --cache FOLDER  where measured clips are kept, so that the next time is quick
  --force         write over a model that is there

Each folder holds clips and a labels.csv with the columns file and label (leak,
no leak or spoilt) and, if you know them, job, device and cover. Without a job
the folder counts as one. At least 3 jobs and 10 clips of either kind.

Example
  yardhark train jobs/* --out ours.json --name "Our two microphones"

What it is worth is told by jobs that were kept back, and by devices that were
kept back where there are several. Stopped half way, it goes on where it was.
`,
  score: `yardhark score MODEL FILE...: what a detector says of single clips

  --device TEXT   with what they were recorded, as the model's card names it
  --cover TEXT    what they were recorded on
  --json          a list with one object for each clip
  --cache FOLDER  where measured clips are kept

Example
  yardhark score ours.json my-clips/*.wav

A clip unlike all that the detector has heard weighs less, and is marked.
`,
  evaluate: `yardhark evaluate MODEL FOLDER...: what a detector is worth on labelled clips

  --json          one JSON object instead of text
  --cache FOLDER  where measured clips are kept

Example
  yardhark evaluate ours.json new-jobs/*

Folders as for train. Clips that the detector has learnt from are left out.
`,
  report: `yardhark report JOB: what the customer and the office are told

  --html FILE   one page with drawings and photos, to be printed on A4 or
                Letter; it needs nothing else and no network
  --office      the part for the office too (it always is in the page)
  --feet        feet and psi instead of metres and kPa
  --force       write over a file that is there

Examples
  yardhark report alder-square.zip
  yardhark report alder-square.zip --html report.html
  yardhark report unpacked/job.json --office

JOB is a job file, a folder with a job.json in it, or a job.json. The report of
a closed job is made from what was kept when it was closed. Of an open one the
place is worked out from the clips that lie with it.
`,
} as const
