/** The dialog that is open, if any. */
import { Suspense } from 'react';
import { fetched } from '../fetched.tsx';
import { useView } from '../store/view.ts';
import { CloseButton, Dialog } from './Dialog.tsx';
import { FaultsDialog } from './FaultsDialog.tsx';
import { KeysDialog } from './KeysDialog.tsx';
import { NewDialog } from './NewDialog.tsx';

const KitBody = fetched('The kit', () => import('../kit/KitBody.tsx').then((part) => part.KitBody));

const KitDialog = () => (
  <Dialog title="Kit" className="kit">
    <Suspense fallback={<div className="kit-body" />}>
      <KitBody />
    </Suspense>
    <div className="kit-close">
      <CloseButton />
    </div>
  </Dialog>
);

const WorkingBody = fetched('The working', () =>
  import('../working/WorkingBody.tsx').then((part) => part.WorkingBody),
);

const WorkingDialog = () => (
  <Dialog title="How it came about" className="working">
    <Suspense fallback={<div className="working-blank" />}>
      <WorkingBody />
    </Suspense>
  </Dialog>
);

export default function Dialogs() {
  const dialog = useView((view) => view.dialog);
  if (dialog === 'new') return <NewDialog />;
  if (dialog === 'keys') return <KeysDialog />;
  if (dialog === 'kit') return <KitDialog />;
  if (dialog === 'working') return <WorkingDialog />;
  return dialog === 'faults' ? <FaultsDialog /> : null;
}
