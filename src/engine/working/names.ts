/** Names of figures. */

/** Name of a figure of one frame. @param k - counted from 0 */
export const ofFrame = (k: number, what: string): string => `frame.${k + 1}.${what}`;

/** Name of a figure of one exposure of the sheet. @param i - counted from 0 */
export const ofExposure = (i: number, what: string): string => `sheet.exposure.${i + 1}.${what}`;

/** Name of a figure of one action of the sheet. @param a - counted from 0 */
export const ofAction = (a: number, what: string): string => `sheet.action.${a + 1}.${what}`;

/** Name of a figure of one day of work on the sheet. @param d - counted from 0 */
export const ofWorkDay = (d: number, what: string): string => `sheet.day.${d + 1}.${what}`;

/** Name of a figure of the sky on a date, `yyyy-mm-dd`. */
export const ofDate = (date: string, what: string): string => `days.${date}.${what}`;

/** Name of how many days of a year there are of a kind. */
export const ofYear = (year: number, what: string): string => `days.${year}.${what}`;
