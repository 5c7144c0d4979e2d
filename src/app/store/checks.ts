/** All that checks plans and what is typed: one part of the program, fetched after the figures (see `checker.ts`). */
export { crossFaults } from '../../engine/plan/check.ts';
export { parsePlan } from '../../engine/plan/parse.ts';
export { enterText } from '../fields/entry.ts';
export * from './pacingEdits.ts';
