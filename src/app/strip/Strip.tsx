/** The pacing strip: event, interval, frames, frame rate, clip, and when. */
import { type ReactNode, Suspense } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { fetched } from '../fetched.tsx';
import { durationParts, exactDuration } from '../format/durations.ts';
import { numberText, plural } from '../format/numbers.ts';
import { rateText } from '../format/rate.ts';
import { ArrowRight } from '../icons.tsx';
import { withChecks } from '../store/checker.ts';
import { FRAMES, type Free, figurePath, paceFigures, RATE } from '../store/pacing.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { Figure } from './Figure.tsx';
import { HoldMenu } from './HoldMenu.tsx';
import { clipNote, dialNote, eventNote, framesNote, intervalNote, type Note } from './notes.ts';
import { When } from './When.tsx';

const Sign = ({ children }: { children: ReactNode }) => (
  <span className="op" aria-hidden="true">
    {children}
  </span>
);

const WORKINGS = {
  event: 'totals.eventDurationS',
  interval: 'totals.intervalS',
  clip: 'totals.clipLengthS',
} as const;

interface FreeFigureProps {
  plan: Plan;
  figure: Free;
  label: string;
  note: Note | string;
  extra?: string;
  sign?: ReactNode;
}

/** One of the three figures that can be worked out from the other two. */
function FreeFigure({ plan, figure, label, note, extra = '', sign }: FreeFigureProps) {
  const value = paceFigures(plan)[figure];
  return (
    <Figure
      name={figurePath(figure)}
      label={label}
      of={WORKINGS[figure]}
      parts={durationParts(value, value < 10 ? 3 : 2)}
      text={exactDuration(value)}
      note={note}
      extra={extra}
      sign={sign}
      onType={({ typeSeconds }, text) => typeSeconds(figure, text)}
      onStep={({ stepFigure }, steps) => stepFigure(figure, steps)}
      equals={{
        pressed: plan.pacing.workedOut === figure,
        onPress: () => withChecks(({ chooseWorkedOut }) => chooseWorkedOut(figure)),
      }}
    />
  );
}

const RateFigure = ({ rate, sign }: { rate: string; sign: ReactNode }) => (
  <Figure
    name={RATE}
    label="Frame rate"
    of="totals.frameRate"
    parts={[{ number: rateText(rate), unit: 'fps' }]}
    text={rateText(rate)}
    note=""
    sign={sign}
    onType={({ typeRate }, text) => typeRate(text)}
    onStep={({ stepRate }, steps) => stepRate(rate, steps)}
  />
);

interface CountProps {
  label: string;
  frames: number;
  note: string;
  sign: ReactNode;
}

const FramesFigure = ({ label, frames, note, sign }: CountProps) => (
  <Figure
    name={FRAMES}
    label={label}
    of="totals.frames"
    parts={[{ number: numberText(frames), unit: '' }]}
    text={String(frames)}
    note={note}
    sign={sign}
    inputMode="numeric"
    onType={({ typeFrames }, text) => typeFrames(text)}
    onStep={({ typeFrames }, steps) => typeFrames(String(Math.max(1, frames + steps)))}
  />
);

/** Event ÷ interval → frames ÷ frame rate → clip. */
function TimeLapse({ plan, schedule }: { plan: Plan; schedule: Schedule }) {
  return (
    <>
      <FreeFigure plan={plan} figure="event" label="Event" note={eventNote(plan, schedule)} />
      <FreeFigure
        plan={plan}
        figure="interval"
        label="Interval"
        note={intervalNote(plan, schedule)}
        extra={dialNote(plan, schedule)}
        sign={<Sign>÷</Sign>}
      />
      <FramesFigure
        label="Frames"
        frames={schedule.totals.frames}
        note={framesNote(plan)}
        sign={<Sign>{<ArrowRight />}</Sign>}
      />
      <RateFigure rate={plan.clip.frameRate} sign={<Sign>÷</Sign>} />
      <FreeFigure
        plan={plan}
        figure="clip"
        label="Clip"
        note={clipNote(plan, schedule)}
        sign={<Sign>{<ArrowRight />}</Sign>}
      />
    </>
  );
}

/** Shot × frame rate → frames, on twos → exposures × each → session. */
function StopMotion({ plan, schedule }: { plan: Plan; schedule: Schedule }) {
  const { totals } = schedule;
  return (
    <>
      <FreeFigure plan={plan} figure="clip" label="Shot" note={plural(totals.clipFrames, 'frame')} />
      <RateFigure rate={plan.clip.frameRate} sign={<Sign>×</Sign>} />
      <FramesFigure
        label="Exposures"
        frames={totals.frames}
        note={`for ${plural(totals.clipFrames, 'frame')}`}
        sign={<HoldMenu holdFrames={plan.clip.holdFrames} />}
      />
      <FreeFigure
        plan={plan}
        figure="interval"
        label="Each"
        note={intervalNote(plan, schedule)}
        extra={dialNote(plan, schedule)}
        sign={<Sign>×</Sign>}
      />
      <FreeFigure
        plan={plan}
        figure="event"
        label="Session"
        note={eventNote(plan, schedule)}
        sign={<Sign>{<ArrowRight />}</Sign>}
      />
    </>
  );
}

/** Decoration: the figures do not wait for it. */
const Comb = fetched(null, () => import('../charts/Comb.tsx').then((part) => part.Comb));

export function Strip({ children }: { children: ReactNode }) {
  const plan = usePlan((present) => present);
  const schedule = useSchedule();
  const shot = plan.technique === 'stopMotion';
  const Figures = shot ? StopMotion : TimeLapse;
  return (
    <section className="strip" aria-label="Pacing">
      <div className="row">
        <div className={shot ? 'five shot' : 'five'}>
          <div className="figs">
            <Figures plan={plan} schedule={schedule} />
          </div>
          <Suspense fallback={<div className="chart-comb" />}>
            <Comb frames={schedule.totals.frames} />
          </Suspense>
        </div>
        <When plan={plan} schedule={schedule} />
      </div>
      {children}
    </section>
  );
}
