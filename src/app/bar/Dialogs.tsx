/** The dialog that is open, if any. */
import { Suspense } from 'react';
import { fetched } from '../fetched.tsx';
import { useView } from '../store/view.ts';
import { CloseButton, Dialog } from './Dialog.tsx';
import { FaultsDialog } from './FaultsDialog.tsx';
import { KeysDialog } from './KeysDialog.tsx';
import { NewDialog } from './NewDialog.tsx';

const KitBody = fetched('The kit', () => import('../kit/KitBody.tsx').then((part) => part.KitBody));

const PlansBody = fetched('The list of plans', () =>
  import('../plans/PlansBody.tsx').then((part) => part.PlansBody),
);

const PlansDialog = () => (
  <Dialog title="Plans" className="kit">
    <Suspense fallback={<div className="kit-body" />}>
      <PlansBody />
    </Suspense>
    <div className="kit-close">
      <CloseButton />
    </div>
  </Dialog>
);

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

export default function Dialogs() {
  const dialog = useView((view) => view.dialog);
  if (dialog === 'new') return <NewDialog />;
  if (dialog === 'keys') return <KeysDialog />;
  if (dialog === 'kit') return <KitDialog />;
  if (dialog === 'plans') return <PlansDialog />;
  return dialog === 'faults' ? <FaultsDialog /> : null;
}
