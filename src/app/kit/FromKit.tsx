/** The ways from the inputs into the kit. The kit itself is fetched when it is opened. */
import { showKit } from '../store/view.ts';
import type { KitKind } from './kinds.ts';

/** Heard names of what a section can take from the kit. */
const HEARD: Readonly<Record<KitKind, string>> = {
  camera: 'camera',
  lens: 'lens',
  trigger: 'trigger',
  axis: 'axis',
  arm: 'arm',
  source: 'power source',
  card: 'card',
};

/** Opens the kit with the kinds of gear that a section is about. */
export const FromKit = ({ kinds }: { kinds: readonly KitKind[] }) => (
  <button
    type="button"
    className="btn"
    aria-label={`From the kit: ${kinds.map((kind) => HEARD[kind]).join(', ')}`}
    onClick={() => showKit({ kinds })}
  >
    From the kit
  </button>
);

interface KeepProps {
  kind: KitKind;
  /** Place in the plan's list. */
  index?: number;
  /** Name of the member, as it is heard. */
  name: string;
}

/** Keeps a member of one of the plan's lists in the kit, and shows it there. */
export const KeepInKit = ({ kind, index = 0, name }: KeepProps) => (
  <button
    type="button"
    className="btn"
    aria-label={`Keep in the kit: ${name}`}
    onClick={() => showKit({ kinds: [kind], keep: { kind, index } })}
  >
    Keep in the kit
  </button>
);

/** Keeps what a plan has one of: `Keep in the kit: camera, lens, trigger`. */
export const KeepLine = ({ kinds }: { kinds: readonly KitKind[] }) => (
  <p className="hint keep">
    Keep in the kit:
    {kinds.map((kind) => (
      <button
        key={kind}
        type="button"
        className="link"
        aria-label={`Keep the ${HEARD[kind]} in the kit`}
        onClick={() => showKit({ kinds: [kind], keep: { kind, index: 0 } })}
      >
        {HEARD[kind]}
      </button>
    ))}
  </p>
);
