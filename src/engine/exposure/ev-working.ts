/** How exposure values of settings came about, and the settings that are typed. */
import { opened } from '../cycle/working.ts';
import { readingEv } from '../light/scene.ts';
import type { Plan } from '../plan/schema.ts';
import { type Draft, term, type Worked, type Workings } from '../working/make.ts';
import type { Term } from '../working/types.ts';
import { cameraOpenS, openShutterS } from './shutter.ts';
import { exactApertureF, exactIso } from './stops.ts';
import { typedEv } from './typed.ts';

export const APEX =
  'EV = log₂(N²/t) (APEX; Ray, The Manual of Photography, 2000, p. 318); at ISO 100 as in ISO 2720.';

/** Settings, exact, and the exposure value that they come to. */
interface Settings {
  value: number;
  apertureF: number;
  open: Term;
  iso: number;
  filterStops: number;
}

/** The light that settings are right for. */
export const evDraft = (
  title: string,
  { value, apertureF, open, iso, filterStops }: Settings,
  remark: string,
): Draft => ({
  title,
  value,
  unit: 'EV',
  expression: 'log2(aperture ^ 2 / openS) - log2(iso / 100) + filterStops',
  terms: [
    term('aperture', 'f-number, exact', apertureF, ''),
    open,
    term('iso', 'ISO speed, exact', iso, ''),
    term('filterStops', 'filter', filterStops, 'stops'),
  ],
  remarks: [remark],
  source: APEX,
});

const markedRemark = (shutterS: number, apertureF: number, iso: number): string =>
  `Marked ${shutterS} s, f/${apertureF}, ISO ${iso}; computed on the exact values behind the marks.`;

function typed(plan: Plan): Draft {
  const { shutterS, apertureF, iso, filterStops } = plan.exposure;
  const settings = {
    value: typedEv(plan),
    apertureF: exactApertureF(apertureF),
    open: term('openS', 'shutter open', openShutterS(plan), 's', 'exposure.openS'),
    iso: exactIso(iso),
    filterStops,
  };
  return evDraft('Exposure value of the settings as typed', settings, markedRemark(shutterS, apertureF, iso));
}

function reading(plan: Plan): Draft {
  const { meteredShutterS, meteredApertureF, meteredIso, meteredFilterStops } = plan.light;
  const settings = {
    value: readingEv(plan),
    apertureF: exactApertureF(meteredApertureF),
    open: term('openS', 'shutter open', cameraOpenS(plan, meteredShutterS), 's'),
    iso: exactIso(meteredIso),
    filterStops: meteredFilterStops,
  };
  const remark = markedRemark(meteredShutterS, meteredApertureF, meteredIso);
  return evDraft('Exposure value of the reading', settings, remark);
}

/** Workings of the settings that are typed, and of the reading of the light. */
export const typedWorkings = ({ plan }: Worked): Workings => ({
  'exposure.openS': () => opened(plan, openShutterS(plan), plan.exposure.shutterS),
  'exposure.ev': () => typed(plan),
  ...(plan.light.kind === 'sky' && plan.light.metered && { 'light.readingEv': () => reading(plan) }),
});
