/** What is left of the lamps' ripple at each shutter time in use. */
import { openShutterS } from '../../engine/exposure/shutter.ts';
import type { Plan } from '../../engine/plan/schema.ts';
import { ofFrame } from '../../engine/working/names.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { How } from '../working/How.tsx';
import { lampRows, MOST_ROWS, restText, type UsedShutter } from './lampRows.ts';

/** Each shutter time that the run uses: as the ramp takes them, or as set. */
function useShutters(plan: Plan): UsedShutter[] {
  const { exposure, columns } = useSchedule();
  const first = exposure?.rungs[columns.rung?.[0] ?? 0];
  if (exposure && first)
    return [{ ...first, frame: 1 }, ...exposure.changes.map(({ to, frame }) => ({ ...to, frame }))];
  return [{ shutterS: plan.exposure.shutterS, openS: openShutterS(plan), frame: 1 }];
}

export function LampTable() {
  const plan = usePlan((present) => present);
  const rows = lampRows(plan, useShutters(plan));
  return (
    <>
      <table className="ripple w2">
        <caption>The lamps at the shutter times in use</caption>
        <thead>
          <tr>
            <th scope="col">Shutter</th>
            <th scope="col">Ripple left</th>
            <th scope="col">Frame to frame</th>
            <th scope="col">Nearest within the limit</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, MOST_ROWS).map(({ shutter, frame, left, change, over, better }) => (
            <tr key={shutter}>
              <td>{shutter}</td>
              <td>
                <How of={ofFrame(frame - 1, 'rippleLeftShare')} what={`${left}, ripple left at ${shutter}`}>
                  {left}
                </How>
              </td>
              <td>
                <span className={over ? 'sev warning' : undefined}>
                  <How
                    of={ofFrame(frame - 1, 'rippleShare')}
                    what={`${change}, frame to frame at ${shutter}`}
                  >
                    {change}
                  </How>
                </span>
              </td>
              <td>{better}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > MOST_ROWS && <p className="s w2">{restText(rows)}</p>}
    </>
  );
}
