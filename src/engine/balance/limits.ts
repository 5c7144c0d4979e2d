/** Whether a value is over its limit. One met to the last digit is met: sums and quotients carry a rounding. */
export const exceeds = (value: number, limit: number): boolean => value > limit * (1 + 1e-9);
