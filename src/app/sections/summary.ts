/** One line of useful facts for each section of the inputs, shown while it is closed. */
import type { Finding, Severity } from '../../engine/findings/types.ts';
import type { Axis, Plan, RampStep, Track } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { wordText } from '../fields/words.ts';
import { bytesText } from '../format/bytes.ts';
import { clockOf, dateOf } from '../format/clock.ts';
import { atLeastText, durationText } from '../format/durations.ts';
import { shutterText } from '../format/exposure.ts';
import { numberText, plural, withUnit } from '../format/numbers.ts';
import { rateText } from '../format/rate.ts';
import type { SectionId } from '../store/view.ts';
import { holdText } from '../strip/notes.ts';

type Summary = (plan: Plan, schedule: Schedule) => string;

/** The facts that there are, in one line. */
export const facts = (...list: (string | false)[]): string =>
  list.filter((fact) => fact !== false && fact !== '').join(', ');

/** `mm` or `°`. */
export const axisUnitText = (unit: Axis['unit']): string => (unit === 'deg' ? '°' : 'mm');

const amount = (value: number, unit: Axis['unit']): string =>
  unit === 'deg' ? `${numberText(value, 2)}°` : withUnit(numberText(value, 2), 'mm');

const clip: Summary = ({ clip: { frameRate, widthPx, heightPx, handlesFrames, holdFrames } }) =>
  facts(
    withUnit(rateText(frameRate), 'fps'),
    `${widthPx} × ${heightPx}`,
    holdFrames > 1 && holdText(holdFrames),
    handlesFrames > 0 ? `handles 2 × ${handlesFrames}` : 'no handles',
  );

const camera: Summary = ({ camera: { writeS, shutterLagS }, trigger }, { totals }) =>
  facts(
    `${bytesText(totals.frameBytes)} a frame`,
    `write ${durationText(writeS)}`,
    `lag ${durationText(shutterLagS)}`,
    `trigger in steps of ${durationText(trigger.stepS)}`,
  );

/** `shutter to 1 s`, `ISO to 800`, `aperture to f/4`. */
export function rampStepText({ setting, to }: RampStep): string {
  if (setting === 'shutter') return `shutter to ${shutterText(to)}`;
  return setting === 'iso' ? `ISO to ${numberText(to)}` : `aperture to f/${numberText(to)}`;
}

const exposure: Summary = ({
  exposure: { shutterS, apertureF, iso, bracketCount, filterStops, ramp },
  camera: { noiseReduction },
}) =>
  facts(
    shutterText(shutterS),
    `f/${numberText(apertureF)}`,
    `ISO ${numberText(iso)}`,
    filterStops > 0 && `ND of ${plural(filterStops, 'stop')}`,
    ramp.used && `${ramp.steps.map(rampStepText).join(', ') || 'no ramp step yet'} as the light falls`,
    bracketCount > 1 && `bracket of ${bracketCount}`,
    noiseReduction && 'noise reduction',
  );

const cycle: Summary = ({ cycle: { guardS } }, { totals }) =>
  facts(`guard ${durationText(guardS)}`, `shortest interval ${atLeastText(totals.shortestIntervalS)}`);

function trackText(track: Track, axes: readonly Axis[]): string {
  const unit = axes.find(({ name }) => name === track.axis)?.unit ?? 'mm';
  const ends = [track.keyframes[0], track.keyframes.at(-1)].map((k) => amount(k?.position ?? 0, unit));
  return `${track.axis} ${ends[0]} to ${ends[1]}`;
}

const settleText = ({ settleBy, settleS }: Plan['move'], { rig: { ringing } }: Schedule): string =>
  settleBy === 'time' || ringing === null
    ? `settle ${durationText(settleS)}`
    : `settle by ringing, up to ${durationText(Math.round(ringing.longestSettleS * 100) / 100)}`;

const move: Summary = ({ move: planned, rig: { axes } }, schedule) => {
  const { mode, tracks } = planned;
  if (mode === 'still') return 'The rig stands still';
  if (tracks.length === 0) return 'No axis takes part yet';
  const between = mode === 'moveShootMove' ? settleText(planned, schedule) : 'moving all the time';
  return facts(...tracks.map((track) => trackText(track, axes)), between);
};

const rig: Summary = ({ rig: { axes } }) =>
  axes.length === 0
    ? 'No motorised axis'
    : facts(...axes.map((a) => `${a.name} ${amount(a.travelMin, a.unit)} to ${amount(a.travelMax, a.unit)}`));

const balance: Summary = ({ balance: { used, payloadKg } }, { rig: { balance: run } }) => {
  if (!used) return 'Not looked at';
  const payload = `payload ${withUnit(numberText(payloadKg, 2), 'kg')}`;
  if (run === null) return payload;
  const { arm, tip } = run;
  return facts(
    payload,
    arm !== null &&
      arm.counterweightKg > 0 &&
      `${withUnit(numberText(arm.counterweightKg, 2), 'kg')} at ${amount(Math.round(arm.counterweightMm), 'mm')}`,
    tip.marginMm > 0 ? `footing ${amount(Math.round(tip.marginMm), 'mm')} left` : 'tips over',
  );
};

const power: Summary = ({ power: { temperatureC } }, { sources }) => {
  if (sources.length === 0) return 'No source';
  const swaps = sources.flatMap(({ swapFrames }) => swapFrames).sort((a, b) => a - b);
  return facts(
    ...sources.map(({ name, kind, brought }) =>
      kind === 'mains' ? `${name} from the mains` : `${brought} × ${name}`,
    ),
    swaps.length > 0 && `swap at frame ${swaps.slice(0, 3).join(', ')}${swaps.length > 3 ? ' …' : ''}`,
    `${numberText(temperatureC)} °C`,
  );
};

const storage: Summary = ({ storage: { copies } }, { totals, cards }) => {
  const used = cards.filter((card) => card.firstFrame !== null);
  const where =
    used.length === 1 ? (used[0]?.name ?? '') : `${used.length} of ${plural(cards.length, 'card')}`;
  return facts(
    `${bytesText(totals.storageBytes)} on ${where}`,
    copies > 1 && `${copies} copies ${bytesText(totals.copiesBytes)}`,
  );
};

/** `50 min before sunset`, `at civil dusk`. */
export function startText({ event, offsetMin }: Plan['start']): string {
  const name = wordText(event).toLowerCase();
  if (offsetMin === 0) return `at ${name}`;
  return `${durationText(Math.abs(offsetMin) * 60)} ${offsetMin < 0 ? 'before' : 'after'} ${name}`;
}

function lightText({ kind, studioEv, metered }: Plan['light']): string {
  if (kind === 'none') return '';
  return kind === 'studio'
    ? `studio ${withUnit(numberText(studioEv, 1), 'EV')}`
    : `sky light${metered ? ', metered' : ''}`;
}

const place: Summary = ({ place: { name, zone }, start, light }, { totals: { firstFrameAt } }) =>
  facts(
    name,
    `${dateOf(firstFrameAt)} ${clockOf(firstFrameAt)}`,
    start.tiedTo === 'sky' && startText(start),
    zone,
    lightText(light),
  );

export const beforeMin = (own: Plan['day']): number =>
  own.travelMin + own.setUpMin + own.balanceMin + own.rehearsalMin + own.testFramesMin + own.inHandMin;
export const afterMin = (own: Plan['day']): number => own.packUpMin + own.travelMin;

const day: Summary = ({ technique, day: own }) => {
  const bring = own.bring.length > 0 && `${own.bring.length} more to bring`;
  if (technique === 'stopMotion') return facts('Hours are on the sheet', bring);
  return facts(
    `${durationText(beforeMin(own) * 60)} before the first frame`,
    `${durationText(afterMin(own) * 60)} after the last`,
    bring,
  );
};

const notes: Summary = (plan) => plan.notes.trim().split('\n')[0]?.slice(0, 120) || 'None';

/** The line of each section. */
export const SUMMARIES: Readonly<Record<SectionId, Summary>> = {
  clip,
  camera,
  exposure,
  cycle,
  move,
  rig,
  balance,
  power,
  storage,
  place,
  day,
  notes,
};

/** The worst findings of a section and how many there are. */
export function worstOf(
  section: SectionId,
  findings: readonly Finding[],
): { severity: Severity; count: number } | null {
  const own = findings.filter(({ subject }) => (subject === 'trigger' ? 'camera' : subject) === section);
  const severity = own[0]?.severity;
  return severity ? { severity, count: own.filter((f) => f.severity === severity).length } : null;
}
