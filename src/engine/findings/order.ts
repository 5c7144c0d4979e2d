/** The order of findings, and the plan's verdict in one sentence. */
import type { Finding, Margin } from './types.ts';
import { SEVERITIES } from './types.ts';
import { bytes, counted, percent, seconds, withUnit } from './words.ts';

/** Worst first, then those of the whole run, then by when they bite. */
export const inOrder = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort(
    (a, b) =>
      SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) || (a.frame ?? 0) - (b.frame ?? 0),
  );

/** Share of the available that is left above the reserve. */
export const headroom = (margin: Margin): number => (margin.left - margin.reserve) / margin.available;

// A track may use all of its travel, from end to end, without being near to failing.
const canRunOut = (margin: Margin): boolean => !margin.id.startsWith('travel:');

function tightestPhrase(margin: Margin): string {
  const left = margin.left - margin.reserve;
  if (margin.id === 'interval') return `${seconds(left)} spare in the longest interval`;
  if (margin.unit === 'bytes') {
    return margin.id === 'buffer' ? `${bytes(left)} of the buffer` : `${bytes(left)} left on the cards`;
  }
  if (margin.unit === 'Wh') return `${percent(headroom(margin))} of ${margin.label} above the reserve`;
  return `${withUnit(left, margin.unit)} of ${margin.label}`;
}

/** What has the smallest share left above its reserve, of all that can run out. */
export const tightestOf = (margins: readonly Margin[]): Margin | undefined =>
  margins.filter(canRunOut).sort((a, b) => headroom(a) - headroom(b))[0];

/**
 * Whether the plan can be shot, and the tightest thing.
 * @param findings - in order
 */
export function verdictOf(findings: readonly Finding[], margins: readonly Margin[]): string {
  const worst = findings[0];
  if (worst?.severity === 'stop') {
    const sentence = `${worst.message.charAt(0).toLowerCase()}${worst.message.slice(1)}`;
    const proper = /^(The|All|A|Interval|Handles)\b/.test(worst.message) ? sentence : worst.message;
    return `Not shootable: ${proper}`;
  }
  const warnings = findings.filter((finding) => finding.severity === 'warning').length;
  const verdict = warnings > 0 ? `Shootable, with ${counted(warnings, 'warning')}.` : 'Shootable.';
  const tightest = tightestOf(margins);
  if (!tightest) return verdict;
  return headroom(tightest) < 0
    ? `${verdict} Tightest: ${tightest.label.toLowerCase()}, into its reserve.`
    : `${verdict} Tightest: ${tightestPhrase(tightest)}.`;
}
