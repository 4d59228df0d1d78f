import type { Wording } from './wording'

/** Why a hold test says what it says, and what is odd about its readings. */
export const HOLD_REASONS = {
  hold_holds: {
    text: 'In {held_min} the gauge fell by no more than its step: {fall_fine_kpa}, between {low_fine_kpa} and {high_fine_kpa}.',
  },
  hold_unseen_cancelling: {
    text: 'Warming that raises the gauge as fast as a leak lowers it looks the same. No gauge can see that.',
  },
  hold_temperature_not_told: {
    text: 'The temperature was not told. Read it at the start and at the end where you can.',
  },
  hold_drops: {
    text: 'In {held_min} the gauge fell by {fall_fine_kpa}, between {low_fine_kpa} and {high_fine_kpa}. Rounding and noise do not explain it.',
  },
  hold_came_up_to: {
    text: 'The gauge came up to {highest_fine_kpa}, and {asked_fine_kpa} were asked. Water leaves as fast as it is let in.',
  },
  hold_never_came_up: {
    text: 'The line never came up to the {asked_fine_kpa} that were asked. Water leaves as fast as it is let in.',
  },
  hold_readings_in_doubt: {
    text: '{count} of the readings cannot be right, the first is reading {reading}. Correct it, or leave it out.',
  },
  hold_too_few: { text: 'There are {count} readings, and {needed} are needed. Read on.' },
  hold_too_short: { text: 'It was held for {held_min}, and {asked_min} were asked. Read on.' },
  hold_below_asked: {
    text: 'It started at {fine_kpa}, below the {asked_fine_kpa} that were asked. Bring it up and start again.',
  },
  hold_gap: { text: 'For {gap_min} nobody read the gauge. Start again, and read it every half minute.' },
  hold_still_settling: {
    text: 'The needle moves fast at first and slower later, as a line does that is still settling. Wait until it is steady, then start again.',
  },
  hold_temperature_moved: {
    text: 'The temperature moved, and alone could have changed the gauge by as much as a leak. Wait until it is steady.',
  },
  hold_temperature_fell: {
    text: 'The gauge fell by {fall_fine_kpa}, and the cooling alone may have done that. Wait until it is steady.',
  },
  hold_rises: {
    text: 'The gauge rose by {rise_fine_kpa}. The line warms, or the supply is not shut. A leak may hide in it.',
  },
  hold_not_clear: {
    text: 'The fall lies between {low_fine_kpa} and {high_fine_kpa}: a step of the gauge is neither shown nor ruled out. Hold longer.',
  },
  hold_bend_not_clear: {
    text: 'The readings do not show yet whether the needle moves evenly. Hold longer, and read more often.',
  },
  hold_small_fall: {
    text: 'The gauge fell by {fall_fine_kpa}, less than its step, and surely fell. Hold twice as long: a loss goes on.',
  },
  hold_fittings_tight: { text: 'All plugs and fittings were found tight, so the drop is the line itself.' },
  hold_fittings_not_checked: {
    text: 'Not all plugs and fittings were checked. Until they are, the drop may be theirs.',
  },
  hold_fitting_weeps: {
    text: '{name} weeps. Mend it and test again: the drop may be that alone.',
  },
  hold_weeps_yet_holds: {
    text: '{name} was found weeping, yet the gauge holds. Look at it again before you trust this.',
  },
  reading_below_vacuum: {
    text: 'Reading {reading}: less than a vacuum, which cannot be.',
    mend: 'Correct it or leave it out.',
  },
  reading_beyond_pipe: {
    text: 'Reading {reading}: {fine_kpa} is more than the pipe stands.',
    mend: 'Correct it or leave it out.',
  },
  reading_same_time: {
    text: 'Reading {reading} has the same time as reading {other}.',
    mend: 'Correct the time, or leave one out if they differ.',
  },
  reading_out_of_order: {
    text: 'Reading {reading} is earlier than one before it. It counts at its own time.',
    mend: 'Correct the time if it is wrong.',
  },
  reading_unit_slip: {
    text: 'Reading {reading} stands to the others as one unit to another.',
    mend: 'Read in one unit. Correct it or leave it out.',
  },
  reading_unit_asked: {
    text: 'All readings stand to what was asked as one unit to another. The gauge is set to {unit}.',
    mend: 'Choose the unit that stands on the gauge.',
  },
  reading_rises: {
    text: 'At reading {reading} the gauge stands {rise_fine_kpa} higher than before, with the supply shut.',
    mend: 'Look whether the supply leaks past its valve, or the line warms.',
  },
  reading_clock_jumped: {
    text: 'Before reading {reading} there are {gap_min} without any. The clock may have been set.',
    mend: 'Correct the time, leave out what came after, or start again.',
  },
} as const satisfies Record<string, Wording>
