/** All inputs by subject. */
import { memo } from 'react';
import type { SectionId } from '../store/view.ts';
import { Section } from './Section.tsx';

const TITLES: readonly (readonly [SectionId, string])[] = [
  ['clip', 'Clip'],
  ['camera', 'Camera & trigger'],
  ['exposure', 'Exposure'],
  ['cycle', 'Cycle'],
  ['move', 'Move'],
  ['rig', 'Rig'],
  ['balance', 'Balance & support'],
  ['power', 'Power'],
  ['storage', 'Storage'],
  ['place', 'Place & light'],
  ['day', 'Day'],
  ['notes', 'Notes'],
];

export const Inputs = memo(function Inputs() {
  return (
    <section className="panel inputs" aria-labelledby="inputs-title">
      <header>
        <h2 id="inputs-title">Inputs</h2>
        <span className="s">Each line opens</span>
      </header>
      {TITLES.map(([id, title]) => (
        <Section key={id} id={id} title={title} />
      ))}
    </section>
  );
});
