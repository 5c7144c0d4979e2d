/** Everything that the sky is checked against. */
import type { Row } from '../rows.ts';
import { measureAgainstEphemeris } from './against-ephemeris.ts';
import { measurePublished } from './published.ts';

export const measureSky = (): Row[] => [...measurePublished(), ...measureAgainstEphemeris()];
