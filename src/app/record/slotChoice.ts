import type { JobLine } from '../../../shared/job/job'
import { nextSlot, slotAgain, slotAt } from '../../../shared/record/nextSlot'
import { sweepSoFar } from '../../../shared/record/recordInto'
import { type ListenPoint, type ListenWay, nextTake, type Slot } from '../../../shared/record/slot'
import { pointsOnLine } from '../../../shared/sketch/pointsOnLine'

/** Which clip comes next on a line, as its points and the sweep that is being recorded are by now. */
export class SlotChoice {
  private readonly soFar: ReturnType<typeof sweepSoFar>

  constructor(
    private readonly line: JobLine,
    private readonly way: ListenWay,
    sweep: string,
  ) {
    this.soFar = sweepSoFar(line, sweep)
  }

  /** @param kept The clip just recorded; `null` at the start. */
  after(kept: Slot | null): Slot | null {
    return nextSlot(pointsOnLine(this.line), this.way, this.soFar, kept)
  }

  at(point: ListenPoint): Slot {
    return slotAt(point, this.way, this.soFar)
  }

  again(slot: Slot): Slot {
    return slotAgain(slot, this.way, this.soFar)
  }

  /** The points or clips have changed: what was next stays as far as it can. */
  renewed(slot: Slot | null): Slot | null {
    const point = pointsOnLine(this.line).find((each) => each.point === slot?.point)
    if (slot === null || point === undefined) return this.after(null)
    const take = slot.staysPut ? slot.take : nextTake(slot.point, this.soFar)
    const isSame = take === slot.take && point.alongM === slot.alongM && point.offsetM === slot.offsetM
    return isSame ? slot : { ...slot, alongM: point.alongM, offsetM: point.offsetM, take }
  }
}
