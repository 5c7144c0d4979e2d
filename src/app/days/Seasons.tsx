/** Which quarter of the year is in sight, where the whole year does not fit. */
import { shortMonth } from './words.ts';

interface SeasonsProps {
  season: number;
  onSeason: (season: number) => void;
}

export const Seasons = ({ season, onSeason }: SeasonsProps) => (
  <fieldset className="seg full seasons">
    <legend className="vh">Months in sight</legend>
    {[0, 1, 2, 3].map((one) => (
      <button key={one} type="button" aria-pressed={one === season} onClick={() => onSeason(one)}>
        {shortMonth(one * 3)}–{shortMonth(one * 3 + 2)}
      </button>
    ))}
  </fieldset>
);
