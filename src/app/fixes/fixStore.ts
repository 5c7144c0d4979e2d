/** Ways out of what is wrong with the present plan, as far as they are known. Nothing of this is kept. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Margin } from '../../engine/findings/types.ts';
import type { LadderRow } from '../../engine/fixes/interval-ladder.ts';
import type { Fix, Remedy } from '../../engine/fixes/types.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import type { Worked } from '../store/schedules.ts';
import type { News } from './work.ts';

/** Something that was worked out for a plan. */
export interface Of<T> {
  plan: Plan;
  is: T;
}

/** A change that was taken, until the next edit. */
export interface TakenChange {
  /** The plan with it. */
  plan: Plan;
  /** Where it was taken: at a finding's place in the list, or in the ladder. */
  at: number | 'ladder';
  text: string;
}

/** A fix that is only looked at. */
export interface Preview {
  /** The plan without it. */
  plan: Plan;
  fix: Fix;
  /** With it. */
  then: Worked;
}

export interface FixState {
  /** Remedies by the key of their finding. Those of an earlier plan stay until others take their place. */
  remedies: ReadonlyMap<string, Of<Remedy>>;
  slip: Of<Margin | null> | null;
  ladder: Of<LadderRow[]> | null;
  /** The plan about which there is no more to come. */
  rested: Plan | null;
  /** `missing`: no worker can be had. Otherwise why nothing could be worked out. */
  failed: string | null;
  taken: TakenChange | null;
  preview: Preview | null;
}

export const fixStore = createStore<FixState>(() => ({
  remedies: new Map(),
  slip: null,
  ladder: null,
  rested: null,
  failed: null,
  taken: null,
  preview: null,
}));

export const useFixes = <T>(pick: (state: FixState) => T): T => useStore(fixStore, pick);

/** What is known with a piece of news about a plan. */
export function withNews(state: FixState, plan: Plan, news: News): Partial<FixState> {
  if ('remedy' in news) {
    const { remedy } = news;
    return { remedies: new Map(state.remedies).set(remedy.key, { plan, is: remedy }) };
  }
  if ('slip' in news) return { slip: { plan, is: news.slip } };
  if ('ladder' in news) return { ladder: { plan, is: news.ladder } };
  if ('failed' in news) return { failed: news.failed };
  if ('begun' in news) return { failed: null };
  // What was never asked for again is of no use.
  const current = [...state.remedies].filter(([, of]) => of.plan === plan);
  return { rested: plan, remedies: new Map(current) };
}
