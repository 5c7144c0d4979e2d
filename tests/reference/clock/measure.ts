/** Local clocks across changes, against the tz database read with zdump. */

import { defaultPlan } from '../../../src/engine/plan/parse.ts';
import { isoAt, offsetSpans, startOf } from '../../../src/engine/time/clock.ts';
import { type NumberCase, numberRow, type Row, type TextCase, textRow } from '../rows.ts';

const TZ = 'tz database @b9bc7a87 (2026c), compiled with zic, read with zdump (V1)';
const RFC = 'RFC 5545, section 3.3.5 (V2)';
const DATE = 'JavaScript Date in that zone, Node 20.20.2 (computed)';

/** Zone, first instant of the new offset, local clock one second before, local clock then. */
type Change = readonly [id: string, zone: string, at: string, before: string, after: string];

const CHANGES: readonly Change[] = [
  [
    'TZ-01',
    'Europe/London',
    '2026-03-29T01:00:00Z',
    '2026-03-29T00:59:59+00:00',
    '2026-03-29T02:00:00+01:00',
  ],
  [
    'TZ-02',
    'Europe/London',
    '2026-10-25T01:00:00Z',
    '2026-10-25T01:59:59+01:00',
    '2026-10-25T01:00:00+00:00',
  ],
  [
    'TZ-02',
    'Europe/London',
    '2027-03-28T01:00:00Z',
    '2027-03-28T00:59:59+00:00',
    '2027-03-28T02:00:00+01:00',
  ],
  [
    'TZ-02',
    'Europe/London',
    '2027-10-31T01:00:00Z',
    '2027-10-31T01:59:59+01:00',
    '2027-10-31T01:00:00+00:00',
  ],
  [
    'TZ-03',
    'Australia/Lord_Howe',
    '2026-04-04T15:00:00Z',
    '2026-04-05T01:59:59+11:00',
    '2026-04-05T01:30:00+10:30',
  ],
  [
    'TZ-03',
    'Australia/Lord_Howe',
    '2026-10-03T15:30:00Z',
    '2026-10-04T01:59:59+10:30',
    '2026-10-04T02:30:00+11:00',
  ],
  [
    'TZ-05',
    'Antarctica/Troll',
    '2026-03-29T01:00:00Z',
    '2026-03-29T00:59:59+00:00',
    '2026-03-29T03:00:00+02:00',
  ],
  [
    'TZ-05',
    'Antarctica/Troll',
    '2026-10-25T01:00:00Z',
    '2026-10-25T02:59:59+02:00',
    '2026-10-25T01:00:00+00:00',
  ],
  ['TZ-06', 'Pacific/Apia', '2011-12-30T10:00:00Z', '2011-12-29T23:59:59-10:00', '2011-12-31T00:00:00+14:00'],
  [
    'TZ-07',
    'Pacific/Chatham',
    '2026-04-04T14:00:00Z',
    '2026-04-05T03:44:59+13:45',
    '2026-04-05T02:45:00+12:45',
  ],
  [
    'TZ-07',
    'Pacific/Chatham',
    '2026-09-26T14:00:00Z',
    '2026-09-27T02:44:59+12:45',
    '2026-09-27T03:45:00+13:45',
  ],
  ['TZ-08', 'America/Nuuk', '2026-03-29T01:00:00Z', '2026-03-28T22:59:59-02:00', '2026-03-29T00:00:00-01:00'],
  ['TZ-08', 'America/Nuuk', '2026-10-25T01:00:00Z', '2026-10-24T23:59:59-01:00', '2026-10-24T23:00:00-02:00'],
  ['TZ-09', 'Africa/Cairo', '2026-04-23T22:00:00Z', '2026-04-23T23:59:59+02:00', '2026-04-24T01:00:00+03:00'],
  ['TZ-09', 'Africa/Cairo', '2026-10-29T21:00:00Z', '2026-10-29T23:59:59+03:00', '2026-10-29T23:00:00+02:00'],
  [
    'TZ-10',
    'America/Santiago',
    '2026-09-06T04:00:00Z',
    '2026-09-05T23:59:59-04:00',
    '2026-09-06T01:00:00-03:00',
  ],
  [
    'TZ-10',
    'America/Santiago',
    '2026-04-05T03:00:00Z',
    '2026-04-04T23:59:59-03:00',
    '2026-04-04T23:00:00-04:00',
  ],
];

const DAY_MS = 86_400_000;

/** The local clock one second before each change and at it, from the spans of a run over it. */
function* clocks(daysBefore: number, daysAfter: number): Generator<TextCase> {
  for (const [id, zone, at, before, after] of CHANGES) {
    const ms = Date.parse(at);
    const spans = offsetSpans(zone, ms - daysBefore * DAY_MS, ms + daysAfter * DAY_MS, null);
    yield { at: `${id} ${zone} before ${at}`, got: isoAt(ms - 1000, spans), want: before };
    yield { at: `${id} ${zone} at ${at}`, got: isoAt(ms, spans), want: after };
  }
}

/** The instants at which spans of a run over a change begin. */
function* instants(): Generator<NumberCase> {
  for (const [id, zone, at] of CHANGES) {
    const ms = Date.parse(at);
    const spans = offsetSpans(zone, ms - 3 * DAY_MS - 123, ms + 2 * DAY_MS + 456, null);
    yield { at: `${id} ${zone}: spans`, got: spans.length, want: 2 };
    yield { at: `${id} ${zone}: instant`, got: spans[1]?.fromMs ?? Number.NaN, want: ms };
  }
}

/** Runs that begin or end at the change itself: none inside, or one at the last instant. */
function* edges(): Generator<TextCase> {
  for (const [id, zone, at, before, after] of CHANGES) {
    const ms = Date.parse(at);
    const from = offsetSpans(zone, ms, ms + DAY_MS, null);
    const to = offsetSpans(zone, ms - DAY_MS, ms, null);
    const short = offsetSpans(zone, ms - 1000, ms + 1000, null);
    yield { at: `${id}, run from the change`, got: `${from.length} ${isoAt(ms, from)}`, want: `1 ${after}` };
    yield { at: `${id}, run up to the change`, got: isoAt(ms, to), want: after };
    yield { at: `${id}, before its end`, got: isoAt(ms - 1000, to), want: before };
    yield {
      at: `${id}, run of two seconds`,
      got: `${isoAt(ms - 1000, short)} ${isoAt(ms, short)}`,
      want: `${before} ${after}`,
    };
  }
}

/** Zone, local date and time, which of two, instant, kind. */
type Local = readonly [
  zone: string,
  date: string,
  time: string,
  which: 'first' | 'second',
  utc: string,
  kind: string,
];

const LOCAL_RFC: readonly Local[] = [
  // America/New_York: 20071104T013000 is the first one, EDT; 20070311T023000 does not exist and means 03:30 EDT.
  ['America/New_York', '2007-11-04', '01:30', 'first', '2007-11-04T05:30:00Z', 'repeated'],
  ['America/New_York', '2007-03-11', '02:30', 'first', '2007-03-11T07:30:00Z', 'skipped'],
];

const LOCAL_DATE: readonly Local[] = [
  ['Europe/London', '2026-03-29', '01:30', 'first', '2026-03-29T01:30:00Z', 'skipped'],
  ['Europe/London', '2026-10-25', '01:30', 'first', '2026-10-25T00:30:00Z', 'repeated'],
  ['Australia/Lord_Howe', '2026-10-04', '02:15', 'first', '2026-10-03T15:45:00Z', 'skipped'],
  ['Australia/Lord_Howe', '2026-04-05', '01:45', 'first', '2026-04-04T14:45:00Z', 'repeated'],
  ['Pacific/Apia', '2011-12-30', '12:00', 'first', '2011-12-30T22:00:00Z', 'skipped'],
];

const LOCAL_TZ: readonly Local[] = [
  // The second of two: the same wall clock after the change.
  ['Europe/London', '2026-10-25', '01:30', 'second', '2026-10-25T01:30:00Z', 'repeated'],
  ['Australia/Lord_Howe', '2026-04-05', '01:45', 'second', '2026-04-04T15:15:00Z', 'repeated'],
  ['Antarctica/Troll', '2026-10-25', '02:15', 'first', '2026-10-25T00:15:00Z', 'repeated'],
  ['Antarctica/Troll', '2026-10-25', '02:15', 'second', '2026-10-25T02:15:00Z', 'repeated'],
  ['Antarctica/Troll', '2026-03-29', '01:30', 'first', '2026-03-29T01:30:00Z', 'skipped'],
  ['Africa/Cairo', '2026-10-29', '23:30', 'first', '2026-10-29T20:30:00Z', 'repeated'],
  ['Africa/Cairo', '2026-10-29', '23:30', 'second', '2026-10-29T21:30:00Z', 'repeated'],
  // Midnight that does not exist: 00:00 means 01:00.
  ['Africa/Cairo', '2026-04-24', '00:00', 'first', '2026-04-23T22:00:00Z', 'skipped'],
  ['America/Santiago', '2026-09-06', '00:15:30', 'first', '2026-09-06T04:15:30Z', 'skipped'],
  ['America/Nuuk', '2026-03-28', '23:15', 'first', '2026-03-29T01:15:00Z', 'skipped'],
  // The edges: the first and last second of what comes twice, and of what does not exist.
  ['Europe/London', '2026-10-25', '00:59:59', 'second', '2026-10-24T23:59:59Z', 'plain'],
  ['Europe/London', '2026-10-25', '01:00:00', 'second', '2026-10-25T01:00:00Z', 'repeated'],
  ['Europe/London', '2026-10-25', '01:59:59', 'first', '2026-10-25T00:59:59Z', 'repeated'],
  ['Europe/London', '2026-10-25', '02:00:00', 'second', '2026-10-25T02:00:00Z', 'plain'],
  ['Europe/London', '2026-03-29', '00:59:59', 'first', '2026-03-29T00:59:59Z', 'plain'],
  ['Europe/London', '2026-03-29', '01:00:00', 'first', '2026-03-29T01:00:00Z', 'skipped'],
  ['Europe/London', '2026-03-29', '01:59:59', 'first', '2026-03-29T01:59:59Z', 'skipped'],
  ['Europe/London', '2026-03-29', '02:00:00', 'first', '2026-03-29T01:00:00Z', 'plain'],
  // TZ-04: no change since 1986, and an offset of three quarters of an hour.
  ['Asia/Kathmandu', '2026-06-21', '04:30', 'first', '2026-06-20T22:45:00Z', 'plain'],
  ['Pacific/Apia', '2011-12-29', '23:59:59', 'first', '2011-12-30T09:59:59Z', 'plain'],
  ['Pacific/Apia', '2011-12-31', '00:00', 'first', '2011-12-30T10:00:00Z', 'plain'],
];

function planAt([zone, date, time, whenRepeated]: Local, utcOffsetMin: number | null = null) {
  const plan = defaultPlan();
  return {
    ...plan,
    place: { ...plan.place, zone, utcOffsetMin },
    start: { ...plan.start, date, time, whenRepeated },
  };
}

function* starts(table: readonly Local[]): Generator<TextCase> {
  for (const local of table) {
    const [zone, date, time, which, utc, kind] = local;
    const start = startOf(planAt(local));
    const got = `${new Date(start.startMs).toISOString()} ${start.kind}`;
    yield { at: `${zone} ${date} ${time} (${which})`, got, want: `${new Date(utc).toISOString()} ${kind}` };
  }
}

/** An offset given by hand holds whatever the zone says. */
function* overrides(): Generator<TextCase> {
  for (const local of [...LOCAL_DATE, ...LOCAL_TZ]) {
    for (const offsetMin of [-570, 0, 345, 840]) {
      const [, date, time] = local;
      const start = startOf(planAt(local, offsetMin));
      const ms = Date.parse(`${date}T${time}Z`) - offsetMin * 60_000;
      const spans = offsetSpans(local[0], start.startMs, start.startMs + 400 * DAY_MS, offsetMin);
      const want = `${ms} ${offsetMin} plain 1`;
      yield {
        at: `${local[0]} ${date} ${time}, ${offsetMin} min`,
        got: `${start.startMs} ${start.offsetMin} ${start.kind} ${spans.length}`,
        want,
      };
    }
  }
}

/** A run of nearly a year in each zone: its changes, all of them and no more. */
function* longRuns(): Generator<TextCase> {
  const from = Date.parse('2026-01-01T00:00:00Z');
  const zones = ['Europe/London', 'Australia/Lord_Howe', 'Pacific/Chatham', 'America/Nuuk', 'Asia/Kathmandu'];
  for (const zone of zones) {
    const spans = offsetSpans(zone, from, Date.parse('2026-12-31T00:00:00Z'), null);
    const want = CHANGES.filter((change) => change[1] === zone && change[2].startsWith('2026')).map(
      (change) => change[2],
    );
    const got = spans.slice(1).map((span) => new Date(span.fromMs).toISOString().replace('.000', ''));
    yield { at: `${zone}, 2026`, got: got.join(' '), want: want.sort().join(' ') };
  }
}

export function measureClock(): Row[] {
  return [
    textRow(
      {
        quantity: 'local clock before and at a change',
        reference: TZ,
        regime: '17 changes, run of a day each side',
      },
      clocks(1, 1),
    ),
    textRow(
      {
        quantity: 'local clock before and at a change',
        reference: TZ,
        regime: '17 changes, run of 20 and 30 days',
      },
      clocks(20, 30),
    ),
    numberRow(
      { quantity: 'instant of a change', reference: TZ, regime: '17 changes', bound: 0, unit: 'ms' },
      instants(),
    ),
    textRow(
      {
        quantity: 'local clock of a run that begins or ends at a change',
        reference: TZ,
        regime: '17 changes',
      },
      edges(),
    ),
    textRow({ quantity: 'changes of a year', reference: TZ, regime: '5 zones, 2026' }, longRuns()),
    textRow(
      { quantity: 'instant of a local start', reference: RFC, regime: 'ICS-04, New York' },
      starts(LOCAL_RFC),
    ),
    textRow(
      {
        quantity: 'instant of a local start',
        reference: DATE,
        regime: 'TZ-16 to TZ-18, London, Lord Howe, Apia',
      },
      starts(LOCAL_DATE),
    ),
    textRow(
      { quantity: 'instant of a local start', reference: TZ, regime: 'twice, never, and the seconds around' },
      starts(LOCAL_TZ),
    ),
    textRow(
      {
        quantity: 'an offset by hand replaces the zone',
        reference: 'definition of the plan file',
        regime: '-9:30 to +14',
      },
      overrides(),
    ),
  ];
}
