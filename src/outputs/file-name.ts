/** Names of the files that a plan is saved to. */

const LONGEST = 60;
/** Names that Windows keeps for devices. */
const RESERVED = /^(con|prn|aux|nul|com[\d¹²³]|lpt[\d¹²³])$/;

/**
 * The title as the stem of a file name on any system: lower case, letters and digits of any script, hyphens
 * between words. `plan` if nothing is left.
 */
export function fileStem(title: string): string {
  const words =
    title
      .normalize('NFC')
      .toLowerCase()
      .match(/[\p{Letter}\p{Mark}\p{Number}]+/gu) ?? [];
  const stem = [...words.join('-')].slice(0, LONGEST).join('').replace(/-$/, '');
  return stem === '' || RESERVED.test(stem) ? `${stem}-plan`.replace(/^-/, '') : stem;
}
