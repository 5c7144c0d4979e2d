/** One view of the rig: what stays, and the camera under the cursor. */
import { useId } from 'react';
import type { DrawnCamera, Plate } from './drawing.ts';
import { named, spotsAround } from './labels.ts';
import { floorStrokes } from './shapes.ts';

type Look = 'first' | 'last' | 'now';

/** What the camera sees, and where it looks. */
const Sight = ({ camera, look }: { camera: DrawnCamera; look: Look }) => (
  <g className={`rig-${look}`}>
    <path className="rig-field" d={camera.field} />
    <path className="rig-sight" d={camera.sight} />
  </g>
);

/** The arm, its counterweight, and the camera at its end. */
const Camera = ({ camera, look }: { camera: DrawnCamera; look: Look }) => {
  const { at, angle, arm, counterweight } = camera;
  return (
    <g className={`rig-${look}`}>
      {arm !== '' && <path className="rig-arm" d={arm} />}
      {counterweight && (
        <rect className="rig-weight" x={counterweight.x - 6} y={counterweight.y - 6} width="12" height="12" />
      )}
      {angle === null ? (
        <g className="rig-camera" transform={`translate(${at.x} ${at.y})`}>
          <circle r="6" />
          <circle r="1.5" />
        </g>
      ) : (
        <path
          className="rig-camera"
          transform={`translate(${at.x} ${at.y}) rotate(${angle})`}
          d="M-13 -5.5h9.500v3l3.500 -2.500v10l-3.500 -2.500v3h-9.500z"
        />
      )}
    </g>
  );
};

/** What the rig stands on, and what it looks at. */
function Room({ plate }: { plate: Plate }) {
  const { view, floorY, feet, table, rail, post, pivot, subject } = plate;
  return (
    <>
      {floorY !== null && (
        <path
          className="rig-floor"
          d={`M${view.left} ${floorY}H${view.left + view.width}${floorStrokes(view.left, view.left + view.width, floorY)}`}
        />
      )}
      {feet && <circle className="rig-feet" cx={feet.at.x} cy={feet.at.y} r={feet.radius} />}
      {table && <circle className="rig-feet" cx={table.at.x} cy={table.at.y} r={table.radius} />}
      {post !== '' && <path className="rig-post" d={post} />}
      {rail !== '' && <path className="rig-rail" d={rail} />}
      <circle className="rig-pivot" cx={pivot.x} cy={pivot.y} r="3.5" />
      {subject && (
        <path
          className="rig-subject"
          transform={`translate(${subject.x} ${subject.y})`}
          d="M-6 0a6 6 0 1 0 12 0a6 6 0 1 0 -12 0M-10 0H10M0 -10V10"
        />
      )}
    </>
  );
}

interface Props {
  plate: Plate;
  /** The camera under the cursor, and what it is called; null while it is the first or the last. */
  now: { camera: DrawnCamera; name: string } | null;
}

export function RigPlate({ plate, now }: Props) {
  const clip = useId();
  const { view, first, last, path, dimensions, measures, names, caption, taken } = plate;
  const nowName = now && named(view, now.name, spotsAround(now.camera.at, now.name), [...taken]);
  return (
    <g>
      <clipPath id={clip}>
        <rect x={view.left} y={view.top} width={view.width} height={view.height} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        {now && <Sight camera={now.camera} look="now" />}
        <Sight camera={first} look="first" />
        {last && <Sight camera={last} look="last" />}
        <Room plate={plate} />
        <path className="rig-path" d={path} />
        {last && <Camera camera={last} look="last" />}
        <Camera camera={first} look="first" />
        {now && <Camera camera={now.camera} look="now" />}
        {dimensions.map((line) => (
          <path key={line} className="rig-dimension" d={line} />
        ))}
        {measures.map(({ text, x, y }) => (
          <text key={text} className="chart-name chart-dimension" x={x} y={y} textAnchor="middle">
            {text}
          </text>
        ))}
        {[...names, ...(nowName ? [nowName] : [])].map(({ text, x, y }) => (
          <text key={`${text} ${x} ${y}`} className="chart-name" x={x} y={y} textAnchor="middle">
            {text}
          </text>
        ))}
      </g>
      <text className="rig-caption" x={view.left} y={view.top + 14}>
        {caption}
      </text>
    </g>
  );
}
