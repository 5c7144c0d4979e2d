/** How the figures came about that the findings of the sky state. */
import type { Finding } from '../findings/types.ts';
import { counted, seconds, withUnit } from '../findings/words.ts';
import { betweenDraft, momentDraft } from '../time/moment-working.ts';
import { capital, ofFrame, sameAs, term, type Worked, worth } from '../working/make.ts';
import { firstFrame, framesWhere, numberOf, ofFinding, type Said, type Sayers } from '../working/said.ts';
import type { Span } from './spans.ts';
import { SUN_PARTS, sunMomentDrafts } from './sun-moment-working.ts';
import { trailSays } from './trail-finding-working.ts';
import { lensOver } from './view.ts';
import { siteOf } from './windows.ts';
import { apparent } from './working.ts';

const lengthS = ({ fromMs, toMs }: Span): number => (toMs - fromMs) / 1000;

/** The longest window of the day. */
function longestWindow({ plan, made }: Worked, finding: Finding): Said[] {
  const windows = made.sky?.windows ?? [];
  const longest = windows.reduce<Span | null>((a, b) => (a && lengthS(a) >= lengthS(b) ? a : b), null);
  if (longest === null) return [];
  const edge = (ms: number, words: string) => ({ ms, figure: null, words });
  return [
    {
      text: seconds(numberOf(finding, 'longestS')),
      what: 'longestS',
      draft: () =>
        betweenDraft(
          'Longest window',
          plan.place,
          edge(longest.fromMs, 'it begins'),
          edge(longest.toMs, 'it ends'),
        ),
    },
  ];
}

/** Clock of an instant, as its sentence has it. */
function clockIn({ plan }: Worked, { message }: Finding, what: string, title: string, ms: number) {
  const draft = () =>
    momentDraft(title, plan.place, Math.round(ms / 1000) * 1000, { remarks: ['To whole seconds.'] });
  const clock = draft().label?.slice(11, 19) ?? '';
  const date = draft().label?.slice(0, 10) ?? '';
  const dated = `${date} ${clock}`;
  return { text: message.includes(dated) ? dated : clock, what, draft };
}

function outside(of: Worked, finding: Finding): Said[] {
  const { columns, startMs, sky } = of.made;
  const windows = sky?.windows ?? [];
  const lastMs = sky?.run.toMs ?? 0;
  const msAt = (k: number): number => startMs + (columns.elapsedS[k] as number) * 1000;
  const within = (ms: number) => windows.some(({ fromMs, toMs }) => fromMs <= ms && ms <= toMs);
  const { best } = sky ?? {};
  return [
    framesWhere(of, {
      text: counted(numberOf(finding, 'frames'), 'frame'),
      title: 'Frames outside the window',
      others: 'frames within the window, or later than it is followed for',
      holds: (k) => msAt(k) <= lastMs && !within(msAt(k)),
    }),
    firstFrame(finding, 'first frame outside the window'),
    ...(best ? [clockIn(of, finding, 'bestStart', 'Start that would fit', best.startMs)] : []),
  ];
}

/** Least angle between the lens axis and the sun, by the haversine: it keeps its digits where the angle is small. */
function nearest({ plan, made }: Worked, finding: Finding): Said {
  const k = numberOf(finding, 'nearestFrame') - 1;
  const { sky, axes } = made.columns;
  const lens = lensOver(plan, axes)(k);
  return {
    text: withUnit(numberOf(finding, 'nearestDeg'), 'deg'),
    what: 'nearestDeg',
    draft: () => ({
      title: 'Sun from the lens axis',
      unit: 'deg',
      expression:
        '360 / pi * asin(sqrt(sin((sunDeg - lensDeg) * pi / 360) ^ 2 + cos(sunDeg * pi / 180) * cos(lensDeg * pi / 180) * sin((sunAzimuthDeg - lensAzimuthDeg) * pi / 360) ^ 2))',
      terms: [
        term(
          'sunDeg',
          'apparent altitude of the sun',
          sky ? worth(apparent(sky, k)) : 0,
          'deg',
          ofFrame(k, 'sunApparentDeg'),
        ),
        term('lensDeg', 'altitude of the lens axis', lens.altitudeDeg, 'deg'),
        term(
          'sunAzimuthDeg',
          'azimuth of the sun',
          sky?.sunAzimuthDeg[k] as number,
          'deg',
          ofFrame(k, 'sunAzimuthDeg'),
        ),
        term('lensAzimuthDeg', 'azimuth of the lens axis', lens.azimuthDeg, 'deg'),
      ],
      frame: k + 1,
      remarks: ['Of all frames with the sun in the picture the nearest.'],
      source: 'Haversine formula of spherical trigonometry (textbook, from memory).',
    }),
  };
}

function inFrame(of: Worked, finding: Finding): Said[] {
  const stretches = of.made.sky?.inFrame ?? [];
  return [
    firstFrame(finding, 'first frame with the sun in the picture'),
    framesWhere(of, {
      text: counted(numberOf(finding, 'frames'), 'frame'),
      title: 'Frames with the sun in the picture',
      others: 'frames without it',
      holds: (k) =>
        stretches.some(({ firstFrame: first, lastFrame }) => first <= k + 1 && k + 1 <= lastFrame),
    }),
    nearest(of, finding),
  ];
}

/** A clock of the sun on the set, and what stands behind it. */
function sunClock(of: Worked, finding: Finding, what: 'from' | 'to'): Said[] {
  const { place } = of.plan;
  const site = siteOf(of.plan);
  if (site === null) return [];
  const ms = Math.round(numberOf(finding, `${what}Ms`) / 1000) * 1000;
  const name = (part: string) => `${what}${capital(part)}`;
  const title = `Sun on the set ${what}`;
  const named = (part: string) => ofFinding(finding, name(part));
  const drafts = sunMomentDrafts({ place, site, title, ms, named, remarks: ['To whole seconds.'] });
  return [
    { ...clockIn(of, finding, what, title, ms), draft: drafts.moment },
    ...SUN_PARTS.map((part) => ({ text: null, what: name(part), draft: drafts[part] })),
  ];
}

function onSet(of: Worked, finding: Finding): Said[] {
  const times = numberOf(finding, 'times');
  return [
    ...sunClock(of, finding, 'from'),
    ...sunClock(of, finding, 'to'),
    {
      text: counted(times, 'time'),
      what: 'times',
      draft: () =>
        sameAs('Times that the sun reaches the set', 'spans within the run', times, '', null, {
          remarks: ['Found by looking every minute through the pane, their edges by halving.'],
        }),
    },
  ];
}

export const SKY_SAYS: Sayers = {
  'no-window': (of, finding) => [
    ...longestWindow(of, finding),
    { text: seconds(numberOf(finding, 'runS')), of: 'totals.eventDurationS' },
  ],
  'outside-window': outside,
  'sun-in-frame': inFrame,
  'sun-on-set': onSet,
  'star-trails': trailSays,
};
