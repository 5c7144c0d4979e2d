/** While shooting: the exposure that is next, and what there is to say of the one before. */
import { useId, useState } from 'react';
import { setNote, setRetakes } from '../../engine/sheet/edits.ts';
import { exposureText, passesOf, placeOf, takesMin, tickAt, timecodeAt } from '../../engine/sheet/texts.ts';
import { ofExposure } from '../../engine/working/names.ts';
import { signed } from '../charts/format.ts';
import { LessIcon, MoreIcon, StandingTag } from '../icons.tsx';
import { How } from '../working/How.tsx';
import { Pieces } from '../working/Pieces.tsx';
import { framesText, positionAt, positionText, rangeOf } from './cells.ts';
import { clockText, spansOf } from './clock.ts';
import { goToExposure, markNext } from './commands.ts';
import { doIt } from './edits.ts';
import { Fact } from './Fact.tsx';
import type { Sheeted } from './sheeted.ts';
import { tickedOf } from './ticked.ts';
import { minutesText } from './words.ts';

const UNITS = { mm: 'mm', deg: 'deg' } as const;

/** Where each axis has to go, and by how much. */
function Positions({ of: { sheet }, i }: { of: Sheeted; i: number }) {
  const { axes, shot } = sheet.columns;
  if (axes.length === 0) return null;
  return (
    <div className="goes">
      {axes.map((axis) => {
        const sameShot = i > 0 && shot[i - 1] === shot[i];
        const by = sameShot ? positionAt(axis, i) - positionAt(axis, i - 1) : 0;
        const side = axis.from[i] ?? 0;
        return (
          <div key={axis.name}>
            <p className="s">{axis.name} to</p>
            <p>
              <How
                of={ofExposure(i, `axes.${axis.name}.position`)}
                what={`${positionText(axis, positionAt(axis, i))} ${UNITS[axis.unit]}, ${axis.name}`}
              >
                <span className="m">{positionText(axis, positionAt(axis, i))}</span>{' '}
                <span className="unit">{UNITS[axis.unit]}</span>
              </How>
            </p>
            <p className="s">
              {sameShot ? (
                <Pieces
                  pieces={[
                    { text: signed(by, rangeOf(axis).digits), of: ofExposure(i, `axes.${axis.name}.by`) },
                    ' from the last',
                  ]}
                />
              ) : (
                'first of the shot'
              )}
              {side !== 0 && `, arrives going ${side > 0 ? 'up' : 'down'}`}
            </p>
          </div>
        );
      })}
    </div>
  );
}

/** Passes to be taken: crossed off here, for this exposure only. */
function PassBoxes({ names }: { names: readonly string[] }) {
  const id = useId();
  const [taken, setTaken] = useState<ReadonlySet<string>>(new Set());
  const toggle = (name: string) => {
    const next = new Set(taken);
    if (!next.delete(name)) next.add(name);
    setTaken(next);
  };
  return (
    <fieldset className="passes-of">
      <legend className="vh">Passes of this exposure</legend>
      {names.map((name, n) => (
        <div key={name} className="flag">
          <input id={`${id}${n}`} type="checkbox" checked={taken.has(name)} onChange={() => toggle(name)} />
          <label htmlFor={`${id}${n}`}>{name}</label>
        </div>
      ))}
    </fieldset>
  );
}

/** Retakes and a note of an exposure that is done. */
function LastDone({ of, i }: { of: Sheeted; i: number }) {
  const id = useId();
  const tick = tickAt(of.plan, of.sheet, i);
  const [text, setText] = useState<string | null>(null);
  if (!tick) return null;
  const place = placeOf(of.sheet, i);
  const retakes = (by: number) =>
    doIt('Retakes noted.', (plan) => setRetakes(plan, place, tick.retakes + by));
  const leave = () => {
    if (text !== null && text !== tick.note) doIt('Note kept.', (plan) => setNote(plan, place, text));
    setText(null);
  };
  return (
    <section className="last-done" aria-label={`Exposure ${i + 1}, done`}>
      <div className="line">
        <b className="last-name">Exposure {i + 1}</b>
        <span className="s">retakes</span>
        <button
          type="button"
          className="btn"
          aria-label="One retake less"
          disabled={tick.retakes === 0}
          onClick={() => retakes(-1)}
        >
          <LessIcon />
        </button>
        <output className="m" aria-label="Retakes">
          {tick.retakes}
        </output>
        <button type="button" className="btn" aria-label="One retake more" onClick={() => retakes(1)}>
          <MoreIcon />
        </button>
      </div>
      <label htmlFor={id} className="s">
        Note on exposure {i + 1}
      </label>
      <textarea
        id={id}
        rows={2}
        maxLength={500}
        value={text ?? tick.note}
        onChange={({ target }) => setText(target.value)}
        onBlur={leave}
      />
    </section>
  );
}

export function NextPanel({ of, next }: { of: Sheeted; next: number }) {
  const { plan, sheet } = of;
  const { last } = tickedOf(sheet);
  const action = sheet.actions[sheet.columns.action[next] ?? -1];
  const names = next < 0 ? [] : passesOf(plan, sheet, next);
  const clock = clockText(sheet.columns.startMs[next] ?? Number.NaN, spansOf(plan, sheet));
  return (
    <section className="panel next-panel" aria-labelledby="next-title">
      <header>
        <h2 id="next-title">Next exposure</h2>
        <span className="s">{action?.text}</span>
      </header>
      <div className="pad">
        {next < 0 ? (
          <StandingTag standing="fine" text={sheet.exposures === 0 ? 'No exposures yet' : 'All are done'} />
        ) : (
          <>
            <p className="big">
              <button
                type="button"
                className="m"
                onClick={() => goToExposure(next)}
                title="Show it on the sheet"
              >
                {next + 1}
              </button>
              <small>
                <Pieces pieces={['of ', { text: String(sheet.exposures), of: 'sheet.exposures' }]} />
              </small>
            </p>
            <p className="what">{exposureText(plan, sheet, next)}</p>
            <dl className="facts">
              {sheet.shots.length > 1 && (
                <div>
                  <dt>Shot</dt>
                  <dd>{sheet.shots[sheet.columns.shot[next] ?? 0]?.name}</dd>
                </div>
              )}
              <Fact
                name="Frames"
                of={ofExposure(next, 'lastFrame')}
                text={framesText(sheet.columns.firstFrame[next] ?? 0, sheet.columns.frames[next] ?? 0)}
              />
              <Fact name="Timecode" of={ofExposure(next, 'timecode')} text={timecodeAt(plan, sheet, next)} />
              <Fact
                name="Takes"
                of={ofExposure(next, 'takesMin')}
                text={minutesText(takesMin(sheet, next))}
              />
              {clock !== '' && <Fact name="From" of={ofExposure(next, 'clock')} text={clock} />}
            </dl>
            <Positions of={of} i={next} />
            {names.length > 1 && <PassBoxes key={next} names={names} />}
            <button type="button" className="btn main mark" onClick={markNext}>
              Mark {next + 1} done
            </button>
          </>
        )}
        {last !== null && <LastDone key={last} of={of} i={last} />}
      </div>
    </section>
  );
}
