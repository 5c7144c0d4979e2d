/** Frame rates: exact ratios in the plan, the trade's decimals on screen. */

/** Rates of broadcast and cinema that have a decimal nickname. Source: SMPTE ST 12-1 (ratios over 1001). */
const NICKNAMES: Readonly<Record<string, string>> = {
  '23.976': '24000/1001',
  '23.98': '24000/1001',
  '29.97': '30000/1001',
  '47.952': '48000/1001',
  '47.95': '48000/1001',
  '59.94': '60000/1001',
  '119.88': '120000/1001',
};

/** Rates offered for choosing. */
export const COMMON_RATES: readonly string[] = [
  '24000/1001',
  '24',
  '25',
  '30000/1001',
  '30',
  '50',
  '60000/1001',
  '60',
];

/** A frame rate for reading: `25`, `23.976`. */
export function rateText(rate: string): string {
  const known = Object.entries(NICKNAMES).find(([, ratio]) => ratio === rate)?.[0];
  return known ?? rate;
}

/** Reads a frame rate: `25`, `23.976`, `24000/1001`; gives what a plan writes. Other text is passed on. */
export const readRate = (text: string): string => {
  const clean = text
    .trim()
    .replace(',', '.')
    .replace(/\s*fps$/i, '')
    .replace(/\s/g, '');
  return NICKNAMES[clean] ?? clean;
};
