/** The measuring helpers' insides: one part of the program, fetched when the first of them is opened. */
export { SagBody } from './SagBody.tsx';
export { SwingsBody } from './SwingsBody.tsx';
export { TimedWriteBody } from './TimedWriteBody.tsx';
