/** How the rig rings, shown where the settle goes by it. */
import { Suspense } from 'react';
import { fetched } from '../fetched.tsx';

const RingingBody = fetched('The fields of the ringing', () =>
  import('./rigBodies.ts').then((part) => part.RingingBody),
);

export const RingingFields = () => (
  <Suspense>
    <RingingBody />
  </Suspense>
);
