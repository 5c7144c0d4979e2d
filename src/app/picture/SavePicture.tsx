/** Saves the chart that it stands in as a picture; what draws it is fetched then. */
import { type MouseEvent, useState } from 'react';
import { Menu } from '../bar/Menu.tsx';
import { CHART } from './chart.ts';
import './picture.css';

interface Props {
  /** Name of the chart. */
  of: string;
  /** What the caption says besides the plan. */
  sentence?: string;
  /** Where there is room for a sign only. */
  small?: boolean;
}

const Sign = () => (
  <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
    <path d="M8 1.5v8M4.5 6.5 8 10l3.5-3.5M2.5 13.5h11" fill="none" stroke="currentColor" strokeWidth="1.5" />
  </svg>
);

export function SavePicture({ of, sentence = '', small = false }: Props) {
  const [failed, setFailed] = useState(false);
  const save = (kind: 'svg' | 'png') => (event: MouseEvent) => {
    const chart = event.currentTarget.closest<HTMLElement>(CHART);
    if (!chart) return;
    setFailed(false);
    import('./savePicture.ts')
      .then(({ savePicture }) => savePicture(chart, of, sentence, kind))
      .catch(() => setFailed(true));
  };
  return (
    <>
      {failed && (
        <span className="err" role="alert">
          The picture could not be drawn.
        </span>
      )}
      <Menu
        label={`Save picture: ${of}`}
        face={small ? <Sign /> : 'Save picture'}
        className={small ? 'save-picture small' : 'save-picture'}
      >
        <button type="button" onClick={save('svg')}>
          SVG <small>Stays sharp at any size</small>
        </button>
        <button type="button" onClick={save('png')}>
          PNG <small>Opens everywhere</small>
        </button>
      </Menu>
    </>
  );
}
