/** What quiet moves change about the shortest interval of a run: how that came about. */
import { rigMotionOf } from '../rig.ts';
import { Room } from '../room.ts';
import {
  DEFINITION,
  type Draft,
  ofFrame,
  sameAs,
  term,
  type Worked,
  type Workings,
} from '../working/make.ts';
import type { RingingSummary } from './summary.ts';

/** The frame with the longest lane, counted from 0, if the same frames were moved the other way. */
function longestOtherwise({ plan, made }: Worked) {
  const { cameraS, holdS, intervalS } = made.columns;
  const other = { ...plan, move: { ...plan.move, quiet: !plan.move.quiet } };
  const { moveS, settleS } = rigMotionOf(other, intervalS, new Room());
  const rigS = holdS.map((hold, k) => hold + (moveS[k] as number) + (settleS[k] as number));
  const lanes = rigS.map((lane, k) => Math.max(lane, cameraS[k] as number));
  const k = lanes.indexOf(lanes.reduce((most, lane) => Math.max(most, lane), 0));
  const at = (column: Float64Array): number => column[k] as number;
  return {
    k,
    cameraS: at(cameraS),
    rigS: at(rigS),
    holdS: at(holdS),
    moveS: at(moveS),
    settleS: at(settleS),
  };
}

/** What the shortest interval would be with the other choice of quiet moves. */
function shortestOtherwise(of: Worked, title: string, value: number): Draft {
  const { plan } = of;
  const { k, ...lane } = longestOtherwise(of);
  const byCamera = lane.cameraS >= lane.rigS;
  const how = plan.move.quiet
    ? 'With every move as fast as the axes can'
    : 'With every move quiet where that and its settle end sooner';
  return {
    title,
    value,
    unit: 's',
    expression: byCamera ? 'cameraS + guardS' : 'holdS + moveS + settleS + guardS',
    terms: [
      ...(byCamera
        ? [term('cameraS', 'camera lane', lane.cameraS, 's', ofFrame(k, 'cameraS'))]
        : [
            term('holdS', 'hold', lane.holdS, 's', ofFrame(k, 'holdS')),
            term('moveS', 'move, made the other way', lane.moveS, 's'),
            term('settleS', 'settle after it', lane.settleS, 's'),
          ]),
      term('guardS', 'guard', plan.cycle.guardS, 's'),
    ],
    frame: k + 1,
    remarks: [`${how}, this frame has the longest lane, and that decides.`],
    source: DEFINITION,
  };
}

/** Shortest interval with quiet moves, or with none: that of the plan, or what it would be otherwise. */
function shortestWith(of: Worked, quiet: boolean, value: number): Draft {
  const title = `Shortest interval ${quiet ? 'with' : 'without'} quiet moves`;
  if (quiet !== of.plan.move.quiet) return shortestOtherwise(of, title, value);
  const { shortestIntervalS } = of.made.totals;
  return sameAs(title, 'shortest interval', shortestIntervalS, 's', 'totals.shortestIntervalS', {
    value,
    remarks: ['That of the plan as it is.'],
  });
}

/** Workings of what quiet moves change. */
export function quietWorkings(of: Worked, quiet: NonNullable<RingingSummary['quiet']>): Workings {
  const { savesS, shortestIntervalS: withS, shortestIntervalWithoutS: withoutS } = quiet;
  const shortest = (symbol: string, words: string, value: number, what: string) =>
    term(symbol, `shortest interval ${words}`, value, 's', `ringing.${what}`);
  return {
    'ringing.shortestIntervalS': () => shortestWith(of, true, withS),
    'ringing.shortestIntervalWithoutS': () => shortestWith(of, false, withoutS),
    'ringing.savesS': () => ({
      title: 'What quiet moves save',
      value: savesS,
      unit: 's',
      expression: 'withoutS - withS',
      terms: [
        shortest('withoutS', 'without quiet moves', withoutS, 'shortestIntervalWithoutS'),
        shortest('withS', 'with them', withS, 'shortestIntervalS'),
      ],
      remarks: ['Both from the longest lane of all frames, and the guard.'],
      source: DEFINITION,
    }),
  };
}
