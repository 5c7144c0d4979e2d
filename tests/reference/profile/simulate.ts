/** Moves judged without the textbook forms. */

/**
 * Seconds of the fastest move from rest to rest, by stepping: speed up as long as one can still stop in time,
 * hold the top speed, brake when one must.
 */
export function fastestBySteps(distance: number, maxSpeed: number, maxAccel: number): number {
  // A step that is short against both the way up to top speed and the whole way.
  const dt = Math.min(maxSpeed / maxAccel, Math.sqrt(distance / maxAccel)) / 2000;
  let [position, speed, time] = [0, 0, 0];
  for (;;) {
    const faster = Math.min(maxSpeed, speed + maxAccel * dt);
    const ahead = position + ((speed + faster) / 2) * dt;
    if (ahead + (faster * faster) / (2 * maxAccel) >= distance) break;
    if (faster === maxSpeed && speed === maxSpeed) {
      // Nothing changes until braking begins: one long step.
      const cruise = distance - position - (speed * speed) / (2 * maxAccel);
      time += cruise / speed;
      position += cruise;
      break;
    }
    [position, speed, time] = [ahead, faster, time + dt];
  }
  // Braking from here at the full acceleration, and the little way that is then still missing.
  const missing = distance - position - (speed * speed) / (2 * maxAccel);
  return time + speed / maxAccel + (speed > 0 ? missing / speed : 0);
}

/**
 * Distance of a move: its speed rises with the acceleration to the peak, stays, and falls in the same way.
 * Integrated over 500 slices a piece with the midpoint rule, corners at slice ends.
 */
export function travelled(durationS: number, peakSpeed: number, accel: number): number {
  const rampS = peakSpeed / accel;
  const speedAt = (t: number) => Math.min(peakSpeed, accel * t, accel * (durationS - t));
  let sum = 0;
  for (const [from, to] of [
    [0, rampS],
    [rampS, durationS - rampS],
    [durationS - rampS, durationS],
  ] as const) {
    const slice = (to - from) / 500;
    for (let i = 0; i < 500; i += 1) sum += speedAt(from + (i + 0.5) * slice) * slice;
  }
  return sum;
}
