/**
 * How the figures of the sun at an instant came about: where it stands, and the patch that it throws through the pane.
 * Names are `sun.INSTANT.what`, the instant as UTC: `sun.2026-11-14T12:50:00Z.patch.farMm`.
 */
import type { Plan } from '../plan/schema.ts';
import { capital, type Draft, sameAs, term, type Worked, type Workings } from '../working/make.ts';
import { ofSun } from '../working/names.ts';
import { POSITIONS } from './happening.ts';
import { type Patch, patchOn } from './pane.ts';
import { cornersOf } from './patch.ts';
import { type SkyPosition, sunAt } from './position.ts';
import { siteOf } from './windows.ts';
import { lifted } from './working.ts';

const SOURCE =
  'Similar triangles; wall-solar azimuth and profile angle as in ASHRAE’s Handbook of Fundamentals, chapter on fenestration (from memory).';
const RAD = 'pi / 180';
const TURN = `(azimuthDeg - facingDeg) * ${RAD}`;

/** A patch at an instant, and what it is thrown by. */
interface Thrown {
  pane: Plan['pane'];
  ms: number;
  sun: SkyPosition;
  patch: Patch;
}

const sunTerms = ({ ms, sun }: Thrown) => [
  term('altitudeDeg', 'apparent altitude', sun.apparentAltitudeDeg, 'deg', ofSun(ms, 'apparentDeg')),
];
const turnTerms = ({ pane, ms, sun }: Thrown) => [
  term('azimuthDeg', 'azimuth of the sun', sun.azimuthDeg, 'deg', ofSun(ms, 'azimuthDeg')),
  term('facingDeg', 'the pane faces', pane.facingDeg, 'deg'),
];

/** An edge of the patch, into the room: sill or head throws it. */
function edge(of: Thrown, which: 'near' | 'far'): Draft {
  const { pane, patch } = of;
  const near = which === 'near';
  const away = `/ tan(altitudeDeg * ${RAD}) * cos(${TURN})`;
  const over = near ? 'max(0, overMm - planeMm)' : '(overMm - planeMm)';
  return {
    title: `Patch of sun: ${near ? 'nearest' : 'farthest'}, into the room`,
    value: near ? patch.nearMm : Math.min(patch.farMm, pane.roomDepthMm),
    unit: 'mm',
    expression: near ? `${over} ${away}` : `min(${over} ${away}, roomMm)`,
    terms: [
      term('overMm', near ? 'sill' : 'head of the pane', near ? pane.sillMm : pane.headMm, 'mm'),
      term('planeMm', 'height of the set', pane.setHeightMm, 'mm'),
      ...sunTerms(of),
      ...turnTerms(of),
      ...(near ? [] : [term('roomMm', 'depth of the room', pane.roomDepthMm, 'mm')]),
    ],
    remarks: ['From the pane, at the height of the set.'],
    source: SOURCE,
  };
}

/** How far the patch reaches along the wall, from the middle of the pane. */
function side(of: Thrown, which: 'left' | 'right'): Draft {
  const { pane, ms } = of;
  const shown = { ...of.patch, farMm: Math.min(of.patch.farMm, pane.roomDepthMm) };
  const along = cornersOf(pane, shown).map(({ alongMm }) => alongMm);
  const right = which === 'right';
  const edgeOf = (mm: string) => `-${mm} * tan(${TURN})`;
  return {
    title: `Patch of sun: ${which}most, along the wall`,
    value: right ? Math.max(...along) : Math.min(...along),
    unit: 'mm',
    expression: `${right ? 'max' : 'min'}(${edgeOf('nearMm')}, ${edgeOf('farMm')}) ${right ? '+' : '-'} widthMm / 2`,
    terms: [
      term('nearMm', 'nearest, into the room', shown.nearMm, 'mm', ofSun(ms, 'patch.nearMm')),
      term('farMm', 'farthest, into the room', shown.farMm, 'mm', ofSun(ms, 'patch.farMm')),
      ...turnTerms(of),
      term('widthMm', 'width of the pane', pane.widthMm, 'mm'),
    ],
    remarks: ['To the right of the pane’s middle, looking out; less than nothing is to the left.'],
    source: SOURCE,
  };
}

/** The middle of a patch as it lies in the room. */
function middle({ pane, patch }: Pick<Thrown, 'pane' | 'patch'>) {
  const intoMm = (patch.nearMm + Math.min(patch.farMm, pane.roomDepthMm)) / 2;
  return { intoMm, alongMm: patch.skew * intoMm };
}

/** How far the middle of the patch goes in an interval. */
function creep(now: Thrown, next: Thrown, intervalS: number): Draft {
  const [from, to] = [middle(now), middle(next)];
  return {
    title: 'Patch of sun: creeps in an interval',
    unit: 'mm',
    expression: 'sqrt((intoThenMm - intoMm) ^ 2 + (alongThenMm - alongMm) ^ 2)',
    terms: [
      term('intoThenMm', 'its middle an interval later, into the room', to.intoMm, 'mm'),
      term('intoMm', 'its middle, into the room', from.intoMm, 'mm'),
      term('alongThenMm', 'its middle an interval later, to the right', to.alongMm, 'mm'),
      term('alongMm', 'its middle, to the right', from.alongMm, 'mm'),
    ],
    remarks: [`An interval is ${intervalS} s; the middle lies halfway between nearest and farthest.`],
    source: SOURCE,
  };
}

/** Workings of the sun at an instant. @param instant - `yyyy-mm-ddThh:mm:ssZ` */
export function sunWorkings({ plan, made }: Worked, instant: string): Workings {
  const site = siteOf(plan);
  const ms = Date.parse(instant);
  if (!site || Number.isNaN(ms)) return {};
  const thrownAt = (atMs: number): Thrown | null => {
    const sun = sunAt(atMs, site.latitudeDeg, site.longitudeDeg);
    const { pane } = plan;
    const patch = patchOn(pane, pane.setHeightMm, sun.apparentAltitudeDeg, sun.azimuthDeg);
    return patch && patch.nearMm < pane.roomDepthMm ? { pane, ms: atMs, sun, patch } : null;
  };
  const sun = sunAt(ms, site.latitudeDeg, site.longitudeDeg);
  const found = (title: string, valueDeg: number, remark: string) => (): Draft =>
    sameAs(title, 'from its position then', valueDeg, 'deg', null, {
      remarks: [remark],
      source: `${capital(POSITIONS)}.`,
    });
  const { intervalS } = made.totals;
  const now = plan.pane.used ? thrownAt(ms) : null;
  const next = now && thrownAt(ms + intervalS * 1000);
  return {
    altitudeDeg: found('Sun, altitude', sun.geometricAltitudeDeg, 'Geometric, of its centre.'),
    apparentDeg: () => lifted(sun.geometricAltitudeDeg, ofSun(ms, 'altitudeDeg')),
    azimuthDeg: found('Sun, azimuth', sun.azimuthDeg, 'From north, clockwise.'),
    ...(now && {
      'patch.nearMm': () => edge(now, 'near'),
      'patch.farMm': () => edge(now, 'far'),
      'patch.leftMm': () => side(now, 'left'),
      'patch.rightMm': () => side(now, 'right'),
    }),
    ...(now && next && { 'patch.creepMm': () => creep(now, next, intervalS) }),
  };
}
