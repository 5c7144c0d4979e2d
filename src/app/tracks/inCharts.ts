/** What is edited in the charts: one part of the program, fetched where there is something to edit. */
export { AddHere } from './AddHere.tsx';
export { Handles } from './Handles.tsx';
