/** What the settings that are typed are right for; on a page the fields alone ask. */
import type { Plan } from '../plan/schema.ts';
import { ev100 } from './apex.ts';
import { openShutterS } from './shutter.ts';
import { exactApertureF, exactIso } from './stops.ts';

/** Exposure value at ISO 100 that the plan's setting is right for: exact stops, filter counted. */
export const typedEv = (plan: Plan): number =>
  ev100(exactApertureF(plan.exposure.apertureF), openShutterS(plan), exactIso(plan.exposure.iso)) +
  plan.exposure.filterStops;
