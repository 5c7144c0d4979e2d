/**
 * Drop-frame labels counted one by one, from the counting rule alone: at the start of every minute that is no
 * multiple of ten, the first labels are left out (2 at 30 labels a second, 4 at 60, 8 at 120). No frame is.
 */

/**
 * Drop-frame labels of a day in order, each with its frame counted from 0.
 * @param wanted - which of them to give, by frame, second of the minute and label within the second
 */
export function* dropFrameDay(
  labelsPerSecond: 30 | 60 | 120,
  wanted: (frame: number, second: number, label: number) => boolean = () => true,
): Generator<readonly [number, string]> {
  const leftOut = labelsPerSecond / 15;
  const digits = labelsPerSecond > 100 ? 3 : 2;
  const two = (value: number) => String(value).padStart(2, '0');
  let frame = 0;
  for (let minute = 0; minute < 24 * 60; minute += 1) {
    const clock = `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
    for (let second = 0; second < 60; second += 1) {
      for (let label = 0; label < labelsPerSecond; label += 1) {
        if (minute % 10 !== 0 && second === 0 && label < leftOut) continue;
        if (wanted(frame, second, label)) {
          yield [frame, `${clock}:${two(second)};${String(label).padStart(digits, '0')}`];
        }
        frame += 1;
      }
    }
  }
}
