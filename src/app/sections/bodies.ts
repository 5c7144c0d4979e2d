/** The fields of every section: one part of the program, loaded after the figures. */
import { createElement, type FunctionComponent, memo } from 'react';
import { fetched } from '../fetched.tsx';
import type { SectionId } from '../store/view.ts';
import { CameraBody } from './CameraBody.tsx';
import { ClipBody } from './ClipBody.tsx';
import { CycleBody } from './CycleBody.tsx';
import { DayBody } from './DayBody.tsx';
import { ExposureBody } from './ExposureBody.tsx';
import { MoveBody } from './MoveBody.tsx';
import { NotesBody } from './NotesBody.tsx';
import { PlaceBody } from './PlaceBody.tsx';
import { PowerBody } from './PowerBody.tsx';
import { RigBody } from './RigBody.tsx';
import { StorageBody } from './StorageBody.tsx';
import '../styles/light.css';

const BalanceBody = fetched('The fields of the balance', () =>
  import('./rigBodies.ts').then((part) => part.BalanceBody),
);

const BODIES: Readonly<Record<SectionId, FunctionComponent>> = {
  clip: ClipBody,
  camera: CameraBody,
  exposure: ExposureBody,
  cycle: CycleBody,
  move: MoveBody,
  rig: RigBody,
  balance: BalanceBody,
  power: PowerBody,
  storage: StorageBody,
  place: PlaceBody,
  day: DayBody,
  notes: NotesBody,
};

const SectionBody = memo(({ id }: { id: SectionId }) => createElement(BODIES[id]));

export default SectionBody;
