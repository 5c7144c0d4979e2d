/** The horizon all round as a strip: the equator's side in the middle, the sun's way on the plan's day over it. */
import { memo, useId } from 'react';
import { dateOf } from '../format/clock.ts';
import { SavePicture } from '../picture/SavePicture.tsx';
import { usePlan } from '../store/plan.ts';
import { Pieces } from '../working/Pieces.tsx';
import { plainText } from '../working/sentence.ts';
import { horizonSummary } from './lightText.ts';
import { usePosition } from './PositionFields.tsx';
import { groundLine, type Panorama, panorama, sunLines, sunOver, sunPieces } from './panorama.ts';

const MARKS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'] as const;

function Marks({ view }: { view: Panorama }) {
  const end = MARKS[view.fromDeg / 45];
  return (
    <>
      {MARKS.map((mark, i) => (
        <text key={mark} x={view.x(i * 45)} y={view.height - 4} textAnchor="middle">
          {mark}
        </text>
      ))}
      <text x={view.width} y={view.height - 4} textAnchor="end">
        {end}
      </text>
    </>
  );
}

function AltitudeMarks({ view }: { view: Panorama }) {
  return view.altitudes.map((altitude) => (
    <g key={altitude}>
      <path className="mark" d={`M${view.left} ${view.y(altitude)}H${view.width}`} />
      <text x={view.left - 4} y={view.y(altitude) + 4} textAnchor="end">
        {altitude}°
      </text>
    </g>
  ));
}

export const HorizonSketch = memo(function HorizonSketch() {
  const clip = useId();
  const points = usePlan((plan) => plan.place.horizon);
  const date = usePlan((plan) => plan.start.date);
  const zone = usePlan((plan) => plan.place.zone);
  const offsetMin = usePlan((plan) => plan.place.utcOffsetMin);
  const position = usePosition();
  const view = panorama(points, position);
  const sun = position ? sunOver(date, zone, offsetMin, position) : [];
  const pieces = [`${horizonSummary(points)}. `, ...sunPieces(sun, dateOf(date))];
  return (
    <figure className="horizon w2">
      <svg
        viewBox={`0 0 ${view.width} ${view.height}`}
        role="img"
        aria-label={`Own horizon: ${plainText(pieces)}`}
      >
        <clipPath id={clip}>
          <rect x={view.left} y="0" width={view.width - view.left} height={view.bottom} />
        </clipPath>
        <AltitudeMarks view={view} />
        <g clipPath={`url(#${clip})`}>
          {sunLines(view, sun).map((line) => (
            <path key={line} className="sun" d={line} />
          ))}
          <path className="ground" d={groundLine(view, points)} />
        </g>
        <Marks view={view} />
      </svg>
      <figcaption className="s">
        <Pieces pieces={pieces} />
      </figcaption>
      <SavePicture of="Own horizon" />
    </figure>
  );
});
