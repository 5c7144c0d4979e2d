/** Seed and number of the random cases, from the environment: FC_SEED, FC_RUNS. A failure prints both. */
const fromEnvironment = (name: string, byDefault: number): number => {
  const text = process.env[name];
  if (text === undefined || text === '') return byDefault;
  const value = Number(text);
  if (!Number.isSafeInteger(value)) throw new RangeError(`${name}: found '${text}', allowed: a whole number`);
  return value;
};

export const SEED = fromEnvironment('FC_SEED', 20_261_125);
export const RUNS = fromEnvironment('FC_RUNS', 300);

/** Settings of every property; `share` runs fewer cases where each one is dear. */
export const settings = (share = 1): { seed: number; numRuns: number } => ({
  seed: SEED,
  numRuns: Math.max(1, Math.round(RUNS * share)),
});

/** A property may take long on a busy machine; it is not a timed test. */
export const PATIENCE_MS = 180_000;
