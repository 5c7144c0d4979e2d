/** At the foot of a table: the figures of the chosen cell, or of its row, each of which opens its working. */
import { singleKeysOn } from '../singleKeys.ts';
import { type Chosen, HOW_KEY } from './cellFigures.ts';
import { How } from './How.tsx';

export const CellFoot = ({ row, figures, ofCell }: Chosen) => (
  <div className="cell-foot">
    <p>
      <b>How is this worked out?</b> {asking({ row, figures })}
      {ofCell && singleKeysOn() && <span className="by-key"> Press it, or {HOW_KEY} in the table.</span>}
    </p>
    {figures.length > 0 && (
      <ul className="plain">
        {figures.map(({ name, text, of }) => (
          <li key={`${name} ${of}`}>
            <span>{name}</span>
            <How of={of} what={`${text}, ${name}, ${row}`}>
              {text}
            </How>
          </li>
        ))}
      </ul>
    )}
  </div>
);

function asking({ row, figures }: Pick<Chosen, 'row' | 'figures'>): string {
  if (row === '') return 'Choose a figure in the table.';
  return figures.length === 0 ? `${row}: choose a figure of it.` : `${row}.`;
}
