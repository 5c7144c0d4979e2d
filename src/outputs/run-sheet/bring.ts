/** What to bring. */
import { densityOfStops, factorName } from '../../engine/exposure/filters.ts';
import { bytes, counted, figure, withUnit } from '../../engine/findings/words.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule, SourceSummary } from '../../engine/schedule-types.ts';
import type { Sheet } from '../../engine/sheet/types.ts';
import type { SheetLine } from './types.ts';

const FLIGHT = {
  cabin: 'in the cabin only, when you fly',
  'ask the carrier': 'ask the carrier before you fly',
  'not as baggage': 'not as baggage when you fly',
} as const;

function packs({ ratedWh, brought, needed, flight }: SourceSummary, need: number): string {
  const each = `${counted(Math.max(brought, need), 'pack')} of ${withUnit(ratedWh ?? 0, 'Wh')}`;
  const short = need > brought ? `: MORE than the ${brought} that the plan has` : `, ${need} needed`;
  const others = brought <= need && need === needed ? '; none to spare' : '';
  return `${each}${short}${need > brought ? '' : others}${flight ? `; ${FLIGHT[flight]}` : ''}`;
}

/** Packs that the hardest day of a sheet needs: they are charged overnight. */
function packsADay(sheet: Sheet | null, source: SourceSummary): number {
  if (!sheet) return source.needed;
  const days = sheet.days.flatMap(({ energyWh }) => energyWh.filter((own) => own.source === source.name));
  return Math.max(0, ...days.map((own) => own.packs ?? 0));
}

const sources = (made: Schedule, sheet: Sheet | null): SheetLine[] =>
  made.sources.map((source) => {
    if (source.kind === 'mains') return { label: source.name, text: 'Mains lead, residual-current device' };
    const aDay = sheet ? ' a day; charger' : '';
    return { label: source.name, text: packs(source, packsADay(sheet, source)) + aDay };
  });

function cards(plan: Plan, made: Schedule, sheet: Sheet | null): SheetLine[] {
  const inAll = sheet ? sheet.totals : made.totals;
  const used = made.cards.filter(({ firstFrame }) => firstFrame !== null);
  const lines = sheet
    ? plan.storage.cards.map(({ name, cardBytes }) => ({ label: name, text: bytes(cardBytes) }))
    : used.map(({ name, usedBytes, usableBytes }) => ({
        label: name,
        text: `empty: ${bytes(usedBytes)} of ${bytes(usableBytes)} will be used`,
      }));
  const { copies } = plan.storage;
  if (copies <= 1) return lines;
  return [...lines, { label: 'Copies', text: `room for ${bytes(inAll.copiesBytes)} in ${copies} copies` }];
}

const filter = ({ exposure: { filterStops: stops } }: Plan): SheetLine[] =>
  stops > 0
    ? [
        {
          label: 'Filter',
          text: `ND of ${withUnit(stops, stops === 1 ? 'stop' : 'stops')} (density ${figure(densityOfStops(stops))}, ${factorName(stops)})`,
        },
      ]
    : [];

function weights({ balance }: Plan, { rig }: Schedule): SheetLine[] {
  const arm = rig.balance?.arm;
  const counterweight =
    arm && !arm.needsNone && arm.counterweightKg > 0
      ? [{ label: 'Counterweight', text: `${withUnit(arm.counterweightKg, 'kg')}, with a tether and a stop` }]
      : [];
  const ballast =
    rig.balance && balance.ballastKg > 0
      ? [{ label: 'Weigh-down', text: withUnit(balance.ballastKg, 'kg') }]
      : [];
  return [...counterweight, ...ballast];
}

function camera({ camera: own, trigger, rig, technique }: Plan): SheetLine[] {
  const lens = `lens of ${withUnit(own.focalLengthMm, 'mm')}`;
  const axes = rig.axes.map(({ name }) => name).join(', ');
  return [
    { label: 'Camera', text: `${own.name}, ${lens}` },
    ...(technique === 'timeLapse' ? [{ label: 'Trigger', text: trigger.name }] : []),
    ...(axes === '' ? [] : [{ label: 'Rig', text: axes }]),
  ];
}

/** What the plan knows of, and what the user has added. */
export const bringLines = (plan: Plan, made: Schedule, sheet: Sheet | null): SheetLine[] => [
  ...camera(plan),
  ...filter(plan),
  ...weights(plan, made),
  ...sources(made, sheet),
  ...cards(plan, made, sheet),
  ...plan.day.bring.map((text, i) => ({ label: i === 0 ? 'Also' : '', text })),
];
