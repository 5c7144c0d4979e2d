/** Every other figure of the plan that has a working: of the run, and of one frame. */
import { useState } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Schedule } from '../../engine/schedule-types.ts';
import { exposureFiguresOf, frameFiguresOf, runFiguresOf, workingOf } from '../../engine/working/working.ts';
import { gridNow } from '../sheet/gridStore.ts';
import { useView } from '../store/view.ts';

/** Exposure that the name of a figure speaks of, counted from 1; null if of none. */
function exposureNamed(figure: string): number | null {
  const [, exposure] = /^sheet\.exposure\.(\d+)\./.exec(figure) ?? [];
  return exposure === undefined ? null : Number(exposure);
}

/** Exposure of the sheet that one is at, counted from 1. */
function atExposure(): number {
  const { at } = gridNow();
  return at.kind === 'exposure' ? at.index + 1 : 1;
}

/** Without the parts of the lanes: the cycle has them as a table. */
const ofNote = (figures: readonly string[]): string[] =>
  figures.filter((figure) => !/^frame\.\d+\.lane\./.test(figure));

interface Props {
  plan: Plan;
  schedule: Schedule;
  /** Name of the figure that is looked at. */
  of: string;
  /** Its frame, counted from 1. */
  frame: number | null;
  onGoOn: (figure: string) => void;
}

interface Named {
  figure: string;
  name: string;
}

/** Figures as the page calls them; of two of one name the first: what a margin uses has a name of its own too. */
function named(plan: Plan, schedule: Schedule, figures: readonly string[]): Named[] {
  const names = new Map<string, string>();
  for (const figure of figures) {
    const name = workingOf(plan, schedule, figure)?.title ?? figure;
    if (!names.has(name)) names.set(name, figure);
  }
  return [...names].map(([name, figure]) => ({ figure, name }));
}

export function Others({ plan, schedule, of, frame, onGoOn }: Props) {
  const [open, setOpen] = useState(false);
  const cursor = useView((view) => view.cursor);
  const shown = Math.min(schedule.totals.frames, frame ?? (cursor ?? 0) + 1);
  const list = (title: string, figures: readonly Named[]) => (
    <section>
      <h4>{title}</h4>
      <ul className="plain working-others">
        {figures.map(({ figure, name }) => (
          <li key={figure}>
            <button type="button" className="how" onClick={() => onGoOn(figure)}>
              {name}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
  const { technique } = plan;
  const exposure = exposureNamed(of) ?? atExposure();
  return (
    <details className="more" open={open} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>Other figures</summary>
      {open && list('Of the run', named(plan, schedule, runFiguresOf(plan, schedule)))}
      {open &&
        technique === 'stopMotion' &&
        list(`Of exposure ${exposure}`, named(plan, schedule, exposureFiguresOf(plan, schedule, exposure)))}
      {open &&
        list(`Of frame ${shown}`, named(plan, schedule, ofNote(frameFiguresOf(plan, schedule, shown))))}
    </details>
  );
}
