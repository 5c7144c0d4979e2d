/** Chooses what the charts of the axes show. */
import { QUANTITIES, showQuantity, useShown } from '../tracks/shown.ts';

const WORDS = { position: 'Position', speed: 'Speed', steps: 'Steps' } as const;

export function ShowQuantity() {
  const shown = useShown(({ quantity }) => quantity);
  return (
    <fieldset className="seg run-quantity">
      <legend className="vh">Axes show</legend>
      {QUANTITIES.map((quantity) => (
        <button
          key={quantity}
          type="button"
          aria-pressed={quantity === shown}
          onClick={() => showQuantity(quantity)}
        >
          {WORDS[quantity]}
        </button>
      ))}
    </fieldset>
  );
}
