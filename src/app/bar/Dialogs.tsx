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

const ShareDialog = fetched('The share dialog', () =>
  import('../share/ShareDialog.tsx').then((part) => part.default),
);
const LinkDialog = fetched('The plan in the link', () =>
  import('../share/LinkDialog.tsx').then((part) => part.default),
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

const TakeAlong = fetched('What one takes along', () =>
  import('../along/TakeAlong.tsx').then((part) => part.TakeAlong),
);

const AlongDialog = () => (
  <Dialog title="Take along">
    <Suspense>
      <TakeAlong />
    </Suspense>
    <div className="row">
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

const CompareBody = fetched('The comparison', () =>
  import('../compare/CompareBody.tsx').then((part) => part.CompareBody),
);

const CompareDialog = () => (
  <Dialog title="Compare with a copy" className="compare">
    <Suspense fallback={<div className="compare-body" />}>
      <CompareBody />
    </Suspense>
  </Dialog>
);

export default function Dialogs() {
  const dialog = useView((view) => view.dialog);
  if (dialog === 'new') return <NewDialog />;
  if (dialog === 'keys') return <KeysDialog />;
  if (dialog === 'kit') return <KitDialog />;
  if (dialog === 'plans') return <PlansDialog />;
  if (dialog === 'along') return <AlongDialog />;
  if (dialog === 'share') return <ShareDialog />;
  if (dialog === 'link') return <LinkDialog />;
  if (dialog === 'working') return <WorkingDialog />;
  if (dialog === 'compare') return <CompareDialog />;
  return dialog === 'faults' ? <FaultsDialog /> : null;
}
