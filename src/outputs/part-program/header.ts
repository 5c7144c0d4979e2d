/** What a part program says of itself before anything moves. */
import { counted } from '../../engine/findings/words.ts';
import { triggerLines } from '../../engine/plan/part-program-check.ts';
import type { Sheet } from '../../engine/sheet/types.ts';
import { isoAt } from '../../engine/time/clock.ts';
import { plainText } from '../paragraphs.ts';
import type { ProgramAxis } from './axes.ts';
import type { Run } from './program.ts';
import { comment, decimal } from './text.ts';

/** To be read before it runs: on the page before it is saved, too. Common practice, no source. */
export const PROGRAM_CAUTION: readonly string[] = [
  'Run it first with nothing on the arm and a hand on the stop: no camera, no weights, nobody near the rig.',
  'Home every axis first: the plan counts from its zeros. The first move goes from wherever the axes are, one by one.',
  'The controller’s own limits, end stops and emergency stop must work by themselves: the program knows of none. Local rules and licensed practice come first.',
];

function axisText(axis: ProgramAxis, inches: boolean): string {
  const unit = axis.turns ? 'degrees' : inches ? 'inches' : 'mm';
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const steps of axis.steps) {
    low = Math.min(low, steps);
    high = Math.max(high, steps);
  }
  const at = (steps: number) => decimal(steps / axis.stepsPerWord, 3);
  const span = axis.steps.length > 0 ? `, from ${at(low)} to ${at(high)}` : '';
  return `${axis.word} is ${axis.axis.name}, in ${unit}${span}`;
}

/** Backlash that the program leaves to the controller. */
const backlashText = ({ axis, word }: ProgramAxis): string[] =>
  axis.backlash > 0 && axis.arrive === 'eitherWay'
    ? [
        `${word}: a backlash of ${decimal(axis.backlash, 4)} ${axis.unit} is not taken up here. Set it in the controller, or let the axis arrive from one side.`,
      ]
    : [];

function whatItIs({ plan, made }: Run, sheet: Sheet | null): string[] {
  const { frames, intervalS } = made.totals;
  const starts = isoAt(made.startMs, made.offsets).replace('T', ' ');
  if (sheet)
    return [
      `${counted(sheet.exposures, 'exposure')} of stop-motion. It stops [M0] before each pass until it is started again.`,
    ];
  const run = `${counted(frames, 'frame')}, one every ${decimal(intervalS, 3)} s, first frame ${starts}`;
  if (plan.move.mode !== 'continuous') return [run];
  return [
    run,
    'It moves all the time, one move a frame in inverse time [G93], and does not fire the camera, since a line between two moves would stop the rig: start the camera by its own trigger as the program goes on.',
  ];
}

function howItIs({ plan, axes, trigger }: Run, late: { frame: number; lateS: number } | null): string[] {
  const fires = triggerLines(plan).length > 0;
  return [
    ...axes.flatMap(backlashText),
    ...(plan.move.quiet && plan.move.settleBy === 'ringing'
      ? ['Quiet moves are the plan’s own: the controller makes its own ramps, and the rig may ring longer.']
      : []),
    ...(late === null
      ? []
      : [
          'The rest of each interval is worked out from the axes’ speed and acceleration. Time a few intervals with a watch before you rely on it.',
          fires
            ? `The camera is fired by your own lines, which take ${decimal(trigger.dwellS, 3)} s of dwell.`
            : 'No trigger lines: the camera has to fire by itself, in the same interval.',
        ]),
    ...(late !== null && late.lateS > 0
      ? [
          `TOO SLOW: frame ${late.frame} takes ${decimal(late.lateS, 3)} s more than its interval at this feed. The run comes out longer than planned.`,
        ]
      : []),
  ];
}

/** The comments at the head. */
export function headerOf(
  run: Run,
  sheet: Sheet | null,
  late: { frame: number; lateS: number } | null,
): string {
  const { plan, axes } = run;
  const says = [
    'Escapement: a part program, RS-274 text after NISTIR 6556',
    `For the plan: ${plan.title}`,
    ...whatItIs(run, sheet),
    ...PROGRAM_CAUTION,
    ...axes.map((axis) => axisText(axis, plan.partProgram.inches)),
    ...(axes.length > 0 ? [] : ['No axis: it only fires the camera.']),
    ...howItIs(run, late),
  ];
  return says.map((text) => comment(plainText(text))).join('');
}
