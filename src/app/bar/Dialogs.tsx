/** The dialog that is open, if any. */
import { useView } from '../store/view.ts';
import { FaultsDialog } from './FaultsDialog.tsx';
import { KeysDialog } from './KeysDialog.tsx';
import { NewDialog } from './NewDialog.tsx';

export default function Dialogs() {
  const dialog = useView((view) => view.dialog);
  if (dialog === 'new') return <NewDialog />;
  if (dialog === 'keys') return <KeysDialog />;
  return dialog === 'faults' ? <FaultsDialog /> : null;
}
