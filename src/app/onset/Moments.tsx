/** What comes next, and what a hand has to do. */
import { useMemo } from 'react';
import type { Stretch } from '../../engine/onset/stretch.ts';
import { type Moment, momentsOf, type Standing, standingOf } from '../../engine/onset/todo.ts';
import { ofOnset } from '../../engine/working/names.ts';
import { plural } from '../format/numbers.ts';
import { How } from '../working/How.tsx';
import { acknowledged, type Now, onSetOf, type Shoot } from './shoot.ts';
import { happen } from './store.ts';
import { beforeFrame, clockText, countdown, STANDING_WORDS } from './words.ts';

/** A moment and how it stands. */
export interface Standed {
  moment: Moment;
  standing: Standing;
}

const NEXT = 3;

/** Shown in the list: what is done by hand, and what is worth knowing. */
const isShown = ({ byHand, kind }: Moment): boolean =>
  byHand || kind === 'sky' || kind === 'clockChange' || kind === 'lastFrame';

/** All moments of a run; those of a plan that has not begun too. */
export function useMoments({ stretches }: Shoot, stretch: Stretch): Moment[] {
  return useMemo(
    () => momentsOf(stretches.length > 0 ? stretches : [stretch]).filter(isShown),
    [stretches, stretch],
  );
}

/** What is not done though it was due, and the next three. */
export function nextOf(moments: readonly Moment[], shoot: Shoot, nowMs: number): Standed[] {
  const done = new Set(shoot.done);
  const open = moments
    .map((moment) => ({ moment, standing: standingOf(moment, done, nowMs) }))
    .filter(({ standing }) => standing !== 'done');
  const overdue = open.filter(({ standing }) => standing === 'overdue');
  return [...overdue, ...open.filter(({ standing }) => standing !== 'overdue').slice(0, NEXT)];
}

/** The first thing to do that is announced, due or overdue; null if none is. */
export const announcedOf = (all: readonly Standed[]): Standed | null =>
  all.find(({ moment, standing }) => moment.byHand && standing !== 'later') ?? null;

/** The first that can be acknowledged now. */
export const dueNow = (all: readonly Standed[]): Moment | null => announcedOf(all)?.moment ?? null;

/** Acknowledges a thing to do. */
export const markDone = (shoot: Shoot, { key, text }: Moment): void =>
  happen(acknowledged(shoot, key), 'done', `${text}: done`);

const SIGNS: Readonly<Record<Moment['kind'], string>> = {
  firstFrame: 'M3 3v14M17 3v14M8 10h9',
  lastFrame: 'M3 3v14M17 3v14M7 10h6',
  exposureChange: 'M10 2v11M5 9l5 5 5-5M4 18h12',
  swap: 'M2 6h13v8H2zM15 9h3v2h-3M5 8v4',
  cardChange: 'M5 2h7l4 4v12H5zM8 5v3M11 5v3',
  clockChange: 'M10 2a8 8 0 1 0 .1 0zM10 5v5l4 3',
  sky: 'M2 15h16M5 15a5 5 0 0 1 10 0M10 4v3M3 8l2 2M17 8l-2 2',
  sunOnSet: 'M3 3h14v14H3zM3 7h14M3 11h14M3 15h14',
};

function Row({ moment, standing, shoot, now }: Standed & { shoot: Shoot; now: Now }) {
  const { kind, text, atMs, byHand, lostFrames } = moment;
  const { place } = shoot.plan;
  const of = (what: string) => ofOnset(`moment.${moment.key}.${what}`);
  const run = () => onSetOf(shoot, now);
  const inText = countdown((atMs - now.nowMs) / 1000);
  const acts = byHand && standing !== 'later';
  return (
    <li className={standing}>
      <svg className="sign" viewBox="0 0 20 20" aria-hidden="true">
        <path d={SIGNS[kind]} />
      </svg>
      <p>
        <b>{text}</b>
        <span>
          {beforeFrame(moment)},{' '}
          <How of={of('at')} what={`${clockText(atMs, place)}, ${text}`} run={run}>
            {clockText(atMs, place)}
          </How>
          {lostFrames > 0 && (
            <>
              ; loses{' '}
              <How of={of('lost')} what={`${plural(lostFrames, 'frame')}, lost by ${text}`} run={run}>
                {plural(lostFrames, 'frame')}
              </How>
            </>
          )}
        </span>
      </p>
      <p className="in">
        {STANDING_WORDS[standing] !== '' && <b>{STANDING_WORDS[standing]}</b>}
        {standing !== 'overdue' && (
          <How of={of('inS')} what={`${inText}, until ${text}`} run={run}>
            <span className="m">{inText}</span>
          </How>
        )}
      </p>
      {acts && (
        <button
          type="button"
          className="btn main on-done"
          aria-label={`Done: ${text}`}
          onClick={() => markDone(shoot, moment)}
        >
          Done
        </button>
      )}
    </li>
  );
}

export function Moments({ all, shoot, now }: { all: readonly Standed[]; shoot: Shoot; now: Now }) {
  const announced = announcedOf(all);
  return (
    <section aria-label="What comes next" className="on-next">
      <p className="vh" role="status">
        {announced &&
          `${STANDING_WORDS[announced.standing]}: ${announced.moment.text}, ${beforeFrame(announced.moment)}`}
      </p>
      {all.length === 0 ? (
        <p className="s">Nothing more is to be done by hand.</p>
      ) : (
        <ul className="plain">
          {all.map(({ moment, standing }) => (
            <Row key={moment.key} moment={moment} standing={standing} shoot={shoot} now={now} />
          ))}
        </ul>
      )}
    </section>
  );
}
