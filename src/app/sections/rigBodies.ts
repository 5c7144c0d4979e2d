/** Fields of the rig that not every plan needs: one part of the program, fetched when one of them is opened. */
export { BalanceBody } from './BalanceBody.tsx';
export { RingingBody } from './RingingBody.tsx';
export { SubjectBody } from './SubjectBody.tsx';
