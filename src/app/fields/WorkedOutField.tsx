/** A figure that is worked out, in the place and form of the field that it would be typed into. */
import { useId } from 'react';
import { fullText } from '../format/allowed.ts';
import { codecOf } from '../format/quantity.ts';
import { infoAt } from '../store/infos.ts';
import { How } from '../working/How.tsx';

/** @param path - also the name of its working @param value - null while there is none to show */
export function WorkedOutField({ path, value }: { path: string; value: number | null }) {
  const id = useId();
  const info = infoAt(path);
  const text = value === null ? null : fullText(codecOf(path, info.unit), value);
  return (
    <div className="fld">
      <label htmlFor={id}>
        {info.title}
        <span className="vh">, worked out</span>
      </label>
      <div className="box calc">
        <output id={id} className="v m">
          {text === null ? (
            '–'
          ) : (
            <How of={path} what={`${text}, ${info.title}`}>
              {text}
            </How>
          )}
        </output>
      </div>
    </div>
  );
}
