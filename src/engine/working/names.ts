/** Names of figures. */

/** Name of a figure of one frame. @param k - counted from 0 */
export const ofFrame = (k: number, what: string): string => `frame.${k + 1}.${what}`;
