/** Saves the panel of charts that it stands in as a picture; what draws it is fetched then. */
import { type MouseEvent, useState } from 'react';
import { Menu } from '../bar/Menu.tsx';
import './picture.css';

interface Props {
  /** Name of the chart. */
  of: string;
  /** What the caption says besides the plan. */
  sentence?: string;
}

export function SavePicture({ of, sentence = '' }: Props) {
  const [failed, setFailed] = useState(false);
  const save = (kind: 'svg' | 'png') => (event: MouseEvent) => {
    const panel = event.currentTarget.closest<HTMLElement>('.chart-panel');
    if (!panel) return;
    setFailed(false);
    import('./savePicture.ts')
      .then(({ savePicture }) => savePicture(panel, of, sentence, kind))
      .catch(() => setFailed(true));
  };
  return (
    <>
      <span className="err" role="status">
        {failed && 'The picture could not be drawn.'}
      </span>
      <Menu label="Save picture" className="save-picture">
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
