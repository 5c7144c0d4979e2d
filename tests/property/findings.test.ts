import fc from 'fast-check';
import { test, vi } from 'vitest';
import { type Finding, SEVERITIES } from '../../src/engine/findings/types.ts';
import { must, same } from './close.ts';
import { type Judged, judged } from './judged.ts';
import { plans, rigPlans } from './plans.ts';
import { PATIENCE_MS, settings } from './settings.ts';
import { wallInstants } from './slow/clock.ts';
import { verdictOf } from './slow/expected.ts';
import { expectedFindings } from './slow/findings.ts';

vi.setConfig({ testTimeout: PATIENCE_MS });

const property = (check: (given: Judged) => void) =>
  fc.assert(
    fc.property(plans, (given) => check(judged(given))),
    settings(),
  );

/** On plans of every kind, and on short ones with a rig. */
const everywhere = (check: (given: Judged) => void, share = 1) => {
  property(check);
  fc.assert(
    fc.property(rigPlans, (given) => check(judged(given))),
    settings(share),
  );
};

/** Named findings belong to one axis or one source. */
const keyOf = ({ id, values }: Finding) => {
  const { axis, source } = values;
  const name = axis ?? source;
  return name === undefined ? id : `${id} ${name}`;
};

test('every finding is there when it holds, and not there when it does not', () => {
  everywhere((given) => {
    const found = new Map(given.run.findings.map((finding) => [keyOf(finding), finding]));
    same(found.size, given.run.findings.length, 'findings said once');
    for (const [key, expected] of expectedFindings(given)) {
      const { is, frame, severity } = verdictOf(expected);
      const finding = found.get(key);
      if (is !== 'open') same(finding !== undefined, is === 'yes', key);
      if (!finding) continue;
      if (frame !== undefined) same(finding.frame, frame, `${key}: frame`);
      if (severity !== undefined) same(finding.severity, severity, `${key}: severity`);
    }
  }, 2);
});

test('findings stand worst first, then earliest, and are counted', () => {
  everywhere(({ run }) => {
    const rank = run.findings.map(({ severity, frame }) => SEVERITIES.indexOf(severity) * 1e9 + (frame ?? 0));
    same(rank.join(), [...rank].sort((a, b) => a - b).join(), 'order');
    for (const severity of SEVERITIES) {
      same(
        run.counts[severity],
        run.findings.filter((finding) => finding.severity === severity).length,
        severity,
      );
    }
    const stops = run.findings.some(({ severity }) => severity === 'stop');
    same(run.verdict.startsWith('Not shootable'), stops, `verdict '${run.verdict}'`);
  }, 0.3);
});

test('every text and number of a finding, an event and a margin can be shown', () => {
  everywhere(({ run }) => {
    const frames = run.totals.frames;
    const whole = (frame: number, what: string) =>
      must(Number.isInteger(frame) && frame >= 1 && frame <= frames, `${what}: frame ${frame} of ${frames}`);
    const readable = (text: string, what: string) =>
      must(
        text.trim() !== '' && !/NaN|undefined|Infinity|null|\[object/.test(text.replace(/'[^']*'/g, '')),
        `${what}: '${text}'`,
      );
    readable(run.verdict, 'verdict');
    for (const { id, message, frame, elapsedS, at, values } of run.findings) {
      readable(message, id);
      if (frame === null) must(elapsedS === null && at === null, `${id}: a moment without a frame`);
      else {
        whole(frame, id);
        same(elapsedS, run.columns.elapsedS[frame - 1], `${id}: elapsedS`);
        must(!Number.isNaN(Date.parse(at ?? '')), `${id}: at ${at}`);
      }
      for (const [name, value] of Object.entries(values)) {
        must(typeof value === 'string' || Number.isFinite(value), `${id}: ${name} ${value}`);
      }
    }
    for (const { kind, text, frame, lostFrames } of run.events) {
      readable(text, kind);
      whole(frame, kind);
      must(Number.isInteger(lostFrames) && lostFrames >= 0, `${kind}: ${lostFrames} lost frames`);
    }
    for (const margin of run.margins) {
      readable(margin.when, margin.id);
      whole(margin.frame, margin.id);
      for (const name of ['used', 'available', 'reserve', 'left'] as const) {
        must(Number.isFinite(margin[name]), `${margin.id}: ${name} ${margin[name]}`);
      }
      must(
        Math.abs(margin.available - margin.used - margin.left) <=
          1e-9 * (1 + Math.abs(margin.available) + Math.abs(margin.used)),
        `${margin.id}: left`,
      );
    }
    same(new Set(run.margins.map(({ id }) => id)).size, run.margins.length, 'margins said once');
  }, 0.3);
});

test('a margin is overdrawn only where a finding says so', () => {
  everywhere(({ run }) => {
    const findings = new Set(run.findings.map(keyOf));
    const says = (...keys: string[]) => keys.some((key) => findings.has(key));
    for (const { id, left, available } of run.margins) {
      const name = id.slice(id.indexOf(':') + 1);
      // A position may be half a step outside its travel at each end: no step is nearer.
      const axis = id.startsWith('travel:') && run.columns.axes.find((columns) => columns.name === name);
      if (left >= -1e-9 * Math.abs(available) - (axis ? 1 / axis.stepsPerUnit : 0)) continue;
      const said =
        (id === 'interval' && says('cycle-overrun', 'camera-not-ready')) ||
        (id === 'buffer' && says('buffer-fills')) ||
        (id === 'cards' && says('card-full')) ||
        (id.startsWith('source:') && says(`source-short ${name}`)) ||
        (id.startsWith('travel:') && says(`travel ${name}`)) ||
        (id.startsWith('speed:') && says(`speed ${name}`)) ||
        (id === 'blur' && says('motion-blur')) ||
        (id === 'crossing' && says('panning-fast')) ||
        (id === 'support' && says('support-overloaded')) ||
        (id === 'tip' && says('tips-over')) ||
        (id === 'motor' && run.findings.some((finding) => finding.id === 'motor-cannot-hold'));
      must(said, `${id} is overdrawn by ${-left}, and no finding says so`);
    }
  }, 0.5);
});

test('events are in order of time and stand where their frames are', () => {
  property(({ run, plan }) => {
    const { events } = run;
    same(events[0]?.kind, 'firstFrame', 'first event');
    same(events.at(-1)?.kind, 'lastFrame', 'last event');
    same(events.at(-1)?.frame, run.totals.frames, 'last frame');
    for (const [i, event] of events.entries()) {
      must(
        i === 0 || event.frame >= (events[i - 1]?.frame ?? 0),
        `${event.kind} at ${event.frame} out of order`,
      );
      same(event.elapsedS, run.columns.elapsedS[event.frame - 1], `${event.kind}: elapsedS`);
    }
    const swaps = run.sources.reduce((sum, source) => sum + source.swapFrames.length, 0);
    same(events.filter(({ kind }) => kind === 'swap').length, swaps, 'swaps');
    same(events.filter(({ kind }) => kind === 'clockChange').length, run.offsets.length - 1, 'clock changes');
    const changes = events.filter(({ kind }) => kind === 'clockChange');
    for (const [i, event] of changes.entries()) {
      const since = (run.offsets[i + 1]?.fromMs ?? Number.NaN) - run.startMs;
      const elapsedMs = (frame: number) => (frame - 1) * run.totals.intervalS * 1000;
      must(elapsedMs(event.frame) >= since - 1e-3, `clock change before frame ${event.frame}`);
      must(
        event.frame === 1 || elapsedMs(event.frame - 1) < since + 1e-3,
        `clock change after frame ${event.frame}`,
      );
    }
    if (plan.place.utcOffsetMin !== null) same(run.offsets.length, 1, 'offsets by hand');
  });
});

test('the first frame is taken when a clock on the wall shows the start, or after a gap', () => {
  property(({ plan, run }) => {
    const { date, time, whenRepeated } = plan.start;
    const asUtc = Date.parse(`${date}T${time}Z`);
    if (plan.place.utcOffsetMin !== null) {
      same(run.startMs, asUtc - plan.place.utcOffsetMin * 60_000, 'start by hand');
      return;
    }
    const instants = wallInstants(plan);
    const wanted = whenRepeated === 'second' ? instants.at(-1) : instants[0];
    if (wanted !== undefined) same(run.startMs, wanted, 'start');
    else
      must(
        Date.parse(`${run.totals.firstFrameAt.slice(0, 19)}Z`) > asUtc,
        `${run.totals.firstFrameAt} is before the gap`,
      );
  });
});
