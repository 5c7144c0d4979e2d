/** After the last frame: what to do now. */
import { madeOf } from '../../engine/onset/stretch.ts';
import { ofOnset } from '../../engine/working/names.ts';
import { bytesText } from '../format/bytes.ts';
import { durationText } from '../format/durations.ts';
import { plural } from '../format/numbers.ts';
import { Pieces } from '../working/Pieces.tsx';
import { type Piece, plainText } from '../working/sentence.ts';
import { type Now, onSetOf, type Shoot } from './shoot.ts';
import { lostText } from './words.ts';

/** What is left to do, in the order in which it is safe. */
export function stepsAfter({ plan }: Shoot, frameBytes: number, frames: number): Piece[][] {
  const { axes } = plan.rig;
  const bytes = bytesText(frameBytes * frames);
  const said: (string | Piece[])[] = [
    'Stop the trigger.',
    ...(axes.length > 0 ? ['Let the rig come to rest, then switch the motors off.'] : []),
    ...(axes.some(({ kind }) => kind === 'boom')
      ? ['Arm down on its rest and held; weights off before the camera.']
      : []),
    'Look at the first, the middle and the last frame at full size.',
    [
      `Cards out, locked. ${plural(plan.storage.copies, 'copy', 'copies')} of `,
      { text: bytes, of: ofOnset('bytes') },
      ' before one is cleared.',
    ],
    ...(plan.day.packUpMin > 0 ? [`Pack up: ${durationText(plan.day.packUpMin * 60)}.`] : []),
    'Save the log.',
  ];
  return said.map((step) => (typeof step === 'string' ? [step] : step));
}

export function After({ shoot, now }: { shoot: Shoot; now: Now }) {
  const { frameBytes } = madeOf(now.stretch).totals;
  const run = () => onSetOf(shoot, now);
  return (
    <section aria-label="After the last frame" className="on-after">
      <p className="on-state">
        <b>Done.</b>{' '}
        <Pieces run={run} pieces={[{ text: plural(now.begun, 'frame'), of: ofOnset('begun') }]} /> shot
        {shoot.lost > 0 && `, ${lostText(shoot.lost)}`}.
      </p>
      <ol>
        {stepsAfter(shoot, frameBytes, now.begun).map((step) => (
          <li key={plainText(step)}>
            <Pieces run={run} pieces={step} />
          </li>
        ))}
      </ol>
    </section>
  );
}
