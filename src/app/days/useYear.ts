/** The year of the present plan, as far as it is worked out. */
import { useEffect, useMemo, useRef, useState } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import type { DayOfYear } from '../../engine/sky/year.ts';
import type { MonthDone, YearAsk } from './yearWork.ts';

/** What is known of the year asked for. */
export interface YearKnown {
  /** One entry a day of the year, as far as it is known. */
  days: readonly (DayOfYear | undefined)[];
  /** Months that are worked out, 0 to 12; the light of later ones may be known from before. */
  months: number;
  /** The browser runs no worker. */
  failed: boolean;
}

interface Work {
  ask: Ask | null;
  months: readonly (readonly DayOfYear[])[];
  done: number;
}

interface Ask extends YearAsk {
  /** What the answer depends on. */
  key: string;
  /** What the light depends on: windows can change without it. */
  lightKey: string;
}

function keysOf(plan: Plan, year: number, runS: number): Pick<Ask, 'key' | 'lightKey'> {
  const { latitudeDeg, longitudeDeg, zone, utcOffsetMin, horizon } = plan.place;
  const { date: _, ...start } = plan.start;
  const lightKey = JSON.stringify([year, latitudeDeg, longitudeDeg, zone, utcOffsetMin, plan.sky]);
  return { lightKey, key: JSON.stringify([lightKey, runS, horizon, start, plan.window, plan.pane]) };
}

/** The ask stays the same until something changes that the answer depends on. */
function useAsk(plan: Plan, year: number, runS: number): Ask {
  const keys = keysOf(plan, year, runS);
  const [ask, setAsk] = useState<Ask>({ id: 0, ...keys, plan, year, runS });
  if (keys.key === ask.key) return ask;
  const next = { id: ask.id + 1, ...keys, plan, year, runS };
  setAsk(next);
  return next;
}

/** Months of earlier asks stay as long as their light is the same. */
function withMonth({ ask: before, months }: Work, ask: Ask, { month, days }: MonthDone): Work {
  const kept = before?.lightKey === ask.lightKey ? months : [];
  return { ask, months: [...kept.slice(0, month), days, ...kept.slice(month + 1)], done: month + 1 };
}

/**
 * Works the year out in a worker.
 * @param runS - first shutter opening to the last closing, seconds
 */
export function useYear(plan: Plan, year: number, runS: number): YearKnown {
  const ask = useAsk(plan, year, runS);
  const [work, setWork] = useState<Work>({ ask: null, months: [], done: 0 });
  const [failed, setFailed] = useState(false);
  const worker = useRef<Worker>(null);

  useEffect(() => {
    const started = new Worker(new URL('./year.worker.ts', import.meta.url), { type: 'module' });
    started.addEventListener('error', () => setFailed(true));
    worker.current = started;
    return () => started.terminate();
  }, []);

  useEffect(() => {
    const target = worker.current;
    const take = ({ data }: MessageEvent<MonthDone>) => {
      if (data.id === ask.id) setWork((before) => withMonth(before, ask, data));
    };
    target?.addEventListener('message', take);
    target?.postMessage(ask satisfies YearAsk);
    return () => target?.removeEventListener('message', take);
  }, [ask]);

  return useMemo(() => {
    const months = work.ask?.lightKey === ask.lightKey ? work.months : [];
    return { days: months.flat(), months: work.ask === ask ? work.done : 0, failed };
  }, [work, ask, failed]);
}
