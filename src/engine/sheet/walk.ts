/**
 * The clock of the work: one thing after another along a working calendar.
 *
 * Setting up may be broken off at any time. An exposure may not: it is begun only where it also ends before the next
 * break or the end of the day. One that is longer than any stretch of work begins with a day and runs on through it.
 */
import type { WorkCalendar } from './calendar.ts';

/** Nobody leaves off for a second: an exposure that ends within it of a break still ends before it. */
export const HAIR_MS = 1000;

/** Where the work stands. */
export class Walk {
  readonly calendar: WorkCalendar;
  /** The instant reached. */
  atMs: number;
  /** The stretch of work that it lies in, or the next. */
  span: number;
  /** The calendar has come to its end: nothing gets any later. */
  beyond = false;

  constructor(calendar: WorkCalendar, fromMs: number) {
    this.calendar = calendar;
    this.atMs = fromMs;
    this.span = calendar.spanAfter(fromMs);
  }

  /** Day of the stretch reached. */
  get day(): number {
    return this.calendar.dayOf[this.span] ?? this.calendar.days.length - 1;
  }

  /** Goes on to where there is work to do. @returns false at the end of the calendar */
  #toWork(): boolean {
    this.span = this.calendar.spanAfter(this.atMs, this.span);
    return this.#enter();
  }

  #enter(): boolean {
    if (!this.calendar.hasSpan(this.span)) {
      this.atMs = this.calendar.endMs;
      this.beyond = true;
      return false;
    }
    this.atMs = Math.max(this.atMs, this.calendar.fromMs[this.span] as number);
    return true;
  }

  #fits(durationMs: number): boolean {
    const beginMs = Math.max(this.atMs, this.calendar.fromMs[this.span] as number);
    return beginMs + durationMs <= (this.calendar.toMs[this.span] as number) + HAIR_MS;
  }

  /**
   * Work that may be broken off.
   * @param onPart - told of each part without a break in it: its day, and from when to when
   */
  spread(durationMs: number, onPart: (day: number, fromMs: number, toMs: number) => void): void {
    let leftMs = durationMs;
    while (leftMs > 0 && this.#toWork()) {
      const fromMs = this.atMs;
      const partMs = Math.min(leftMs, (this.calendar.toMs[this.span] as number) - fromMs);
      this.atMs = fromMs + partMs;
      leftMs -= partMs;
      onPart(this.day, fromMs, this.atMs);
    }
  }

  /** Work that may not be broken off. @returns when it begins; `atMs` is then when it ends */
  whole(durationMs: number): number {
    const amidMs = this.atMs;
    if (this.#isAmid(durationMs)) {
      this.atMs = amidMs + durationMs;
      return amidMs;
    }
    if (!this.#toWork()) return this.atMs;
    if (!this.#fits(durationMs)) {
      const { calendar } = this;
      if (durationMs > calendar.longestMs + HAIR_MS) this.#toDayStart();
      else while (calendar.hasSpan(this.span) && !this.#fits(durationMs)) this.span += 1;
      if (!this.#enter()) return this.atMs;
    }
    const beginMs = this.atMs;
    this.atMs = beginMs + durationMs;
    return beginMs;
  }

  /** Whether it can begin at once, as most do. */
  #isAmid(durationMs: number): boolean {
    const { fromMs, toMs } = this.calendar;
    const endMs = toMs[this.span];
    if (endMs === undefined || this.atMs >= endMs || this.atMs < (fromMs[this.span] as number)) return false;
    return this.atMs + durationMs <= endMs + HAIR_MS;
  }

  /** On to the beginning of a day, unless that is where it stands. */
  #toDayStart(): void {
    const { calendar } = this;
    const { day } = this;
    const first = calendar.firstSpan[day] as number;
    if (this.span === first && this.atMs <= (calendar.fromMs[first] as number)) return;
    while (calendar.hasSpan(this.span) && calendar.dayOf[this.span] === day) this.span += 1;
  }
}
