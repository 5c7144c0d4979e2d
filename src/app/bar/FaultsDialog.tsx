/** A file that could not be read: every fault, and that nothing was lost. */

import { plural } from '../format/numbers.ts';
import { StandingTag } from '../icons.tsx';
import { useUnread } from '../store/opening.ts';
import { CloseButton, Dialog } from './Dialog.tsx';

export function FaultsDialog() {
  const unread = useUnread();
  if (!unread) return null;
  const { fileName, faults } = unread;
  return (
    <Dialog title={`${fileName} was not opened`}>
      <StandingTag standing="stop" text={plural(faults.length, 'fault')} />
      <p>Nothing was changed: the plan that was open is still open.</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls must be reachable by keys */}
      <section className="scroll" tabIndex={0} aria-label="Faults">
        <table>
          <thead>
            <tr>
              <th scope="col">Where</th>
              <th scope="col">Found</th>
              <th scope="col">Allowed</th>
            </tr>
          </thead>
          <tbody>
            {faults.map((fault, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the list does not change
              <tr key={index}>
                <td className="m">{fault.path || 'The file'}</td>
                <td>{fault.found}</td>
                <td>{fault.allowed}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <div className="row">
        <CloseButton />
      </div>
    </Dialog>
  );
}
