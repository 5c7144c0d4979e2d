/** How the figures came about that the findings of an exposure sheet state. */
import { ofSource } from '../energy/drawn-working.ts';
import { bytes, counted, seconds } from '../findings/words.ts';
import type { Plan } from '../plan/schema.ts';
import { usable } from '../storage/finding-working.ts';
import { momentDraft } from '../time/moment-working.ts';
import { DEFINITION, type Draft, PRACTICE, sameAs, term, type Worked } from '../working/make.ts';
import { ofAction, ofExposure, ofWorkDay } from '../working/names.ts';
import { numberOf, type Said, wordOf } from '../working/said.ts';
import { workMinutes } from './calendar.ts';
import { clockOf } from './findings.ts';
import { originOf } from './reuse.ts';
import type { Sheet, SheetAction, SheetDay, SheetFinding, SheetFindingId } from './types.ts';

/** A plan with its schedule and its sheet. */
export interface OfSheet extends Worked {
  sheet: Sheet;
}

type Sayer = (of: OfSheet, finding: SheetFinding) => readonly Said[];

const DAY_MS = 86_400_000;

/** The exposure where something first happens. @param text - as it stands in the sentence */
const firstExposure = ({ exposure }: SheetFinding, before: string, words: string): Said => ({
  text: `${before}${exposure}`,
  what: 'firstExposure',
  draft: () =>
    sameAs('First exposure of it', words, exposure ?? 0, '', null, {
      remarks: ['Found by going through all exposures; the first of several.'],
    }),
});

/** Of several things those besides the first that is named. @param noun - `day` */
const more = (all: number, noun: string, title: string, words: string): Said => ({
  text: counted(all - 1, noun),
  lead: noun === 'day' ? 'on ' : 'and ',
  what: 'more',
  draft: () => ({
    title,
    unit: `${noun}s`,
    expression: 'all - 1',
    terms: [term('all', words, all, `${noun}s`)],
    remarks: ['The first is named.'],
    source: DEFINITION,
  }),
});

const beginsLate: Sayer = ({ plan }, finding) => {
  const moment = (name: string, what: string, title: string, remark: string): Said => {
    const ms = numberOf(finding, name);
    return {
      text: clockOf(plan, ms),
      what,
      draft: () => momentDraft(title, plan.place, ms, { remarks: [remark], source: PRACTICE }),
    };
  };
  return [
    moment('startMs', 'start', 'Start', 'As the plan has it.'),
    moment(
      'workFromMs',
      'workFrom',
      'Work begins',
      'The working hours, or the end of a break, that come next after the start.',
    ),
  ];
};

/** The longest stretch of work of a plain day, between its hours and breaks. */
function longest({ sheet }: Plan): Draft {
  const stretches = workMinutes(sheet);
  const length = (n: number) => `to${n}Min - from${n}Min`;
  return {
    title: 'Longest stretch of work',
    unit: 's',
    expression:
      stretches.length === 0 ? '0' : `60 * max(${stretches.map((_, n) => length(n + 1)).join(', ')})`,
    terms: stretches.flatMap(([from, to], n) => [
      term(`to${n + 1}Min`, `end of stretch ${n + 1}, after midnight`, to, 'min'),
      term(`from${n + 1}Min`, `beginning of stretch ${n + 1}`, from, 'min'),
    ]),
    remarks: ['Working hours of a day, parted by its breaks.'],
    source: DEFINITION,
  };
}

const tooLong: Sayer = ({ plan }, finding) => [
  firstExposure(finding, 'Exposure ', 'first exposure that is left and longer than any stretch of work'),
  {
    text: seconds(numberOf(finding, 'takesS')),
    of: ofExposure((finding.exposure ?? 1) - 1, 'takesMin'),
  },
  { text: seconds(numberOf(finding, 'longestS')), what: 'longestS', draft: () => longest(plan) },
];

/** The date to which the calendar is followed. */
function followedTo({ plan, sheet }: OfSheet, finding: SheetFinding): Said {
  const date = clockOf(plan, numberOf(finding, 'endMs')).slice(0, 10);
  return {
    text: date,
    what: 'followedTo',
    draft: () => {
      const first = originOf(sheet)?.calendar.days[0]?.date ?? date;
      const [firstDay, lastDay] = [first, date].map((each) => Date.parse(each) / DAY_MS) as [number, number];
      return {
        title: 'The calendar is followed to',
        unit: 'days',
        label: date,
        expression: 'firstDay + followed',
        terms: [
          term('firstDay', `days from 1970-01-01 to ${first}, its first day`, firstDay, 'days'),
          term('followed', 'days that it is followed for', lastDay - firstDay, 'days'),
        ],
        remarks: ['Twenty years of 365 days, taken up to whole lots of 28 days.'],
        source: PRACTICE,
      };
    },
  };
}

/** The exposure that an action begins with. */
const actionBegins = ({ firstExposure: first }: SheetAction): Said => ({
  text: `exposure ${first}`,
  what: 'actionExposure',
  draft: () => ({
    title: 'First exposure of the action',
    unit: '',
    expression: 'before + 1',
    terms: [term('before', 'exposures of the actions before it', first - 1, 'exposures')],
    source: DEFINITION,
  }),
});

const lastShort: Sayer = ({ sheet: { actions } }, finding) => {
  const a = actions.findIndex((action) => action.lastShort);
  const action = actions[a];
  if (!action) return [];
  return [
    ...(action.text === '' ? [actionBegins(action)] : []),
    {
      text: counted(action.frames, 'frame'),
      lead: action.text === '' ? 'has ' : '” has ',
      of: ofAction(a, 'frames'),
    },
    more(numberOf(finding, 'actions'), 'action', 'Others like it', 'actions whose last exposure is shorter'),
  ];
};

const ignored: Sayer = ({ plan }, finding) => {
  const ticks = numberOf(finding, 'ticks');
  const all = plan.sheet.ticks.length;
  return [
    {
      text: counted(ticks, 'tick'),
      what: 'ticks',
      draft: () => ({
        title: 'Ticks that do not count',
        unit: 'ticks',
        expression: 'all - counting',
        terms: [
          term('all', 'ticks of the plan', all, 'ticks'),
          term('counting', 'ticks of exposures that are on the sheet', all - ticks, 'ticks'),
        ],
        source: DEFINITION,
      }),
    },
  ];
};

/** On how many days something holds. */
const daysWhere = (
  { days }: Sheet,
  text: string,
  [title, others]: [string, string],
  holds: (day: SheetDay) => boolean,
): Said => {
  const held = days.filter(holds);
  return {
    text,
    what: 'days',
    draft: () => ({
      title,
      unit: 'days',
      expression: 'days - others',
      terms: [
        term('days', 'days of work', days.length, 'days', 'sheet.days'),
        term('others', others, days.length - held.length, 'days'),
      ],
      remarks: [
        `First on ${held
          .slice(0, 4)
          .map(({ date }) => date)
          .join(', ')}.`,
      ],
      source: DEFINITION,
    }),
  };
};

const sunOnSet: Sayer = ({ plan, sheet }, finding) => {
  const d = sheet.days.findIndex(({ sunSpans }) => sunSpans.length > 0);
  const span = sheet.days[d]?.sunSpans[0];
  if (!span) return [];
  return [
    { text: clockOf(plan, span.fromMs), of: ofWorkDay(d, 'sun.1.from') },
    firstExposure(finding, 'exposure ', 'first exposure that ends after daylight reaches the set'),
    daysWhere(
      sheet,
      counted(numberOf(finding, 'days'), 'day'),
      ['Days with daylight on the set', 'days without'],
      ({ sunSpans }) => sunSpans.length > 0,
    ),
  ];
};

const sourceShort: Sayer = ({ plan, sheet: { days } }, finding) => {
  const name = wordOf(finding, 'source');
  const s = plan.power.sources.findIndex((source) => source.name === name);
  const brought = plan.power.sources[s]?.count ?? 0;
  const d = days.findIndex(({ energyWh }) => (energyWh[s]?.packs ?? 0) > brought);
  const day = days[d];
  if (!day) return [];
  return [
    { text: day.date, lead: 'the work of ', of: ofWorkDay(d, 'from') },
    {
      text: counted(day.energyWh[s]?.packs ?? 0, 'pack'),
      lead: 'takes ',
      of: ofWorkDay(d, ofSource(name, 'packs')),
    },
    more(
      numberOf(finding, 'days'),
      'day',
      'Other days like it',
      'days that take more packs than are brought',
    ),
  ];
};

const cardFull: Sayer = (of, finding) => [
  { text: bytes(numberOf(finding, 'neededBytes')), of: 'sheet.storageBytes' },
  usable(of, finding),
];

/** What each finding of a sheet may state; the others state nothing that was worked out. */
export const SHEET_SAYS: Partial<Record<SheetFindingId, Sayer>> = {
  'start-outside-hours': beginsLate,
  'exposure-too-long': tooLong,
  'calendar-too-long': (of, finding) => [
    followedTo(of, finding),
    firstExposure(finding, 'exposure ', 'first exposure that the calendar has no room for'),
  ],
  'last-short': lastShort,
  'ticks-ignored': ignored,
  'sun-on-set': sunOnSet,
  'source-short': sourceShort,
  'card-full': cardFull,
};
