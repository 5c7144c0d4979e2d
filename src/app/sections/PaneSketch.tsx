/** The sun through the pane: the room from above, the patch at a chosen time, and when the set is hit. */
import { memo, useId, useMemo, useState } from 'react';
import type { Plan } from '../../engine/plan/schema.ts';
import { type Site, siteOf } from '../../engine/sky/windows.ts';
import { dateOf } from '../format/clock.ts';
import { withUnit } from '../format/numbers.ts';
import { SavePicture } from '../picture/SavePicture.tsx';
import { usePlan, useSchedule } from '../store/plan.ts';
import { Pieces } from '../working/Pieces.tsx';
import { plainText } from '../working/sentence.ts';
import { degrees } from './lightText.ts';
import {
  firstShown,
  hitShares,
  hitsPieces,
  instantNear,
  momentPieces,
  type PaneDay,
  type PaneMoment,
  paneDay,
  paneMoment,
} from './paneDay.ts';
import { patchLine, type Room, rayLines, roomOf, scaleBarMm, setRectangle, WALL } from './paneDrawing.ts';

/** Wall, glass, and where the room ends. */
function Walls({ room, pane }: { room: Room; pane: Plan['pane'] }) {
  const { width, height, wallY, backY, x } = room;
  const [left, right] = [x(-pane.widthMm / 2), x(pane.widthMm / 2)];
  return (
    <>
      <path className="wall" d={`M0 ${wallY - WALL}H${width}v${WALL}H0Z`} />
      {backY !== null && <path className="wall" d={`M0 ${backY}H${width}V${height}H0Z`} />}
      <rect className="glass" x={left} y={wallY - WALL} width={right - left} height={WALL} />
      <path className="bar" d={`M${left} ${wallY - WALL / 2}H${right}`} />
      <text x={room.x(0)} y={wallY - WALL - 6} textAnchor="middle">
        Pane, faces {degrees(pane.facingDeg)}
      </text>
    </>
  );
}

function ScaleBar({ room }: { room: Room }) {
  const mm = scaleBarMm(room);
  const length = mm * room.unitsPerMm;
  const y = (room.backY ?? room.height) - 10;
  const text = mm < 1000 ? withUnit(String(mm), 'mm') : withUnit(String(mm / 1000), 'm');
  return (
    <>
      <path className="bar" d={`M10 ${y - 4}v4h${length}v-4`} />
      <text x={10 + length + 6} y={y + 2}>
        {text}
      </text>
    </>
  );
}

/** Where north is: up on the drawing is where the pane faces. */
const North = ({ room, facingDeg }: { room: Room; facingDeg: number }) => {
  const y = (room.backY ?? room.height) - 26;
  return (
    <g transform={`translate(${room.width - 26} ${y}) rotate(${-facingDeg})`}>
      <path className="bar" d="M0 10V-8M-4 -3L0 -9L4 -3" />
      <text y="-17" textAnchor="middle" transform={`rotate(${facingDeg} 0 -17)`} dy="4">
        N
      </text>
    </g>
  );
};

/** The drawing at one moment. */
function RoomPlan({ pane, moment, words }: { pane: Plan['pane']; moment: PaneMoment; words: string }) {
  const clip = useId();
  const room = roomOf(pane);
  const { width, height, wallY, backY } = room;
  const set = setRectangle(room, pane);
  const depth = (backY ?? height) - wallY;
  return (
    <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={`Room from above. ${words}`}>
      <clipPath id={clip}>
        <rect y={wallY} width={width} height={depth} />
      </clipPath>
      <rect className="room" y={wallY} width={width} height={depth} />
      <g clipPath={`url(#${clip})`}>
        {moment.patch && (
          <>
            <path className="rays" d={rayLines(room, pane, moment.patch)} />
            <path className="patch" d={patchLine(room, pane, moment.patch)} />
          </>
        )}
        <rect className="set" {...set} />
        <text className="name" x={set.x + 5} y={set.y + set.height - 5}>
          Set
        </text>
        <ScaleBar room={room} />
        <North room={room} facingDeg={pane.facingDeg} />
      </g>
      <Walls room={room} pane={pane} />
    </svg>
  );
}

/** The times at which the set is hit, over the slider. */
const HitLine = ({ day }: { day: PaneDay }) => (
  <svg className="hits" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
    {hitShares(day).map(([from, to]) => (
      <rect key={from} x={from * 100} width={Math.max(0.5, (to - from) * 100)} height="4" />
    ))}
  </svg>
);

interface TimeProps {
  day: PaneDay;
  index: number;
  moment: PaneMoment;
  onIndex: (index: number) => void;
}

function TimeSlider({ day, index, moment, onIndex }: TimeProps) {
  const where = moment.patch === null ? 'no patch' : moment.onSet ? 'on the set' : 'beside the set';
  return (
    <label className="pane-time">
      <span>Time of day</span>
      <input
        type="range"
        min={0}
        max={day.instants.length - 1}
        value={index}
        aria-valuetext={`${moment.clock}, ${where}`}
        onChange={(event) => onIndex(Number(event.target.value))}
      />
      <output className="m">{moment.clock}</output>
      <HitLine day={day} />
    </label>
  );
}

/** The plan and what of it the sketch is drawn from: other edits leave it alone. */
function usePaneDay(plan: Plan, site: Site) {
  const { place, pane, start } = plan;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the day depends on these parts of the plan only
  return useMemo(() => {
    const day = paneDay(plan, site);
    return { day, shown: firstShown(plan, site, day) };
  }, [place, pane, start.date]);
}

function PaneAtPlace({ plan, site }: { plan: Plan; site: Site }) {
  const { intervalS } = useSchedule().totals;
  const { day, shown } = usePaneDay(plan, site);
  // Kept as time of day, so that another date shows the same.
  const [chosenMs, setChosenMs] = useState<number | null>(null);
  const date = dateOf(plan.start.date);
  if (day.instants.length === 0) return <p className="hint">The sun stays down on {date}.</p>;
  const index = chosenMs === null ? shown : instantNear(day, chosenMs);
  const moment = paneMoment(plan, site, day, day.instants[index] as number, intervalS);
  const pieces = momentPieces(plan.pane, moment);
  const choose = (next: number) => setChosenMs((day.instants[next] as number) - day.startMs);
  return (
    <figure className="pane-plan w2">
      <RoomPlan pane={plan.pane} moment={moment} words={plainText(pieces)} />
      <TimeSlider day={day} index={index} moment={moment} onIndex={choose} />
      <figcaption className="s">
        <Pieces pieces={pieces} />
      </figcaption>
      <p className={day.hits.length > 0 ? 's hit-key' : 's'}>
        <Pieces pieces={hitsPieces(day, plan.start.date, date, plan.technique === 'stopMotion')} />
      </p>
      <SavePicture of="Sun through the pane" />
    </figure>
  );
}

export const PaneSketch = memo(function PaneSketch() {
  const plan = usePlan((present) => present);
  const site = siteOf(plan);
  return site === null ? (
    <p className="hint">With a place on the map the patch of sun shows here.</p>
  ) : (
    <PaneAtPlace plan={plan} site={site} />
  );
});
