/** Long work in slices, so that the page answers meanwhile. */

const SLICE_MS = 30;

const nextTask = (): Promise<void> =>
  new Promise((go) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => go();
    port2.postMessage(null);
  });

/** Text that is made in pieces, as work to be run in slices. */
export function* collected(chunks: Iterable<string>): Generator<void, string[]> {
  const all: string[] = [];
  for (const chunk of chunks) {
    all.push(chunk);
    yield;
  }
  return all;
}

/**
 * Runs work to its end, giving way every few hundredths of a second.
 * @returns what the work came to
 */
export async function inSlices<Result>(work: Generator<unknown, Result>): Promise<Result> {
  let untilMs = performance.now() + SLICE_MS;
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
    if (performance.now() < untilMs) continue;
    await nextTask();
    untilMs = performance.now() + SLICE_MS;
  }
}

/** Runs work to its end at once: printing waits for nothing. */
export function atOnce<Result>(work: Generator<unknown, Result>): Result {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
  }
}
