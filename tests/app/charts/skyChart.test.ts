import { describe, expect, it } from 'vitest';
import { overlap } from '../../../src/app/charts/names.ts';
import { runView } from '../../../src/app/charts/runView.ts';
import { skyBand } from '../../../src/app/charts/skyBand.ts';
import { skyChart } from '../../../src/app/charts/skyChart.ts';
import { columnsOf, msAt, scheduleOf, skyColumns, skyRun } from './handMade.ts';

const FRAMES = 31;
const falling = Array.from({ length: FRAMES }, (_, k) => 2 - k * 0.4);

function chartOf({
  sun = falling,
  moon = falling.map(() => -10),
  widthPx = 1000,
  sky = {},
  evScene = false,
} = {}) {
  const columns = columnsOf(FRAMES, {
    sky: skyColumns(sun, moon),
    evScene: evScene ? new Float32Array(FRAMES).fill(9.54) : null,
  });
  const view = runView(scheduleOf(columns, { sky: skyRun(300, sky) }), widthPx);
  return skyChart(view, skyBand(view));
}

describe('the chart of the sky', () => {
  it('spans whole twilights, with the horizon and each twilight as a level', () => {
    const chart = chartOf();
    expect(chart?.levels.map(({ value, kind }) => [value, kind])).toEqual([
      [0, 'horizon'],
      [-6, 'twilight'],
      [-12, 'twilight'],
    ]);
    expect(chart?.ticks.map(({ label }) => label)).toEqual(expect.arrayContaining(['0', '−6', '−12', '6']));
    // 2 to -10 degrees: the axis is the same for a sun a little lower.
    expect(chartOf({ sun: falling.map((deg) => deg - 1) })?.domain).toEqual(chart?.domain);
  });

  it('reads sun, moon and scene', () => {
    expect(chartOf({ evScene: true })?.read(10)).toMatchObject([
      { name: 'Sun altitude', value: '−2.0', unit: '°' },
      { name: 'Azimuth', value: '300', unit: '°' },
      { name: 'Moon', value: 'down', unit: '' },
      { name: 'Scene', value: '9.5', unit: 'EV' },
    ]);
  });

  it('draws the moon only while it is up', () => {
    const rising = Array.from({ length: FRAMES }, (_, k) => k - 15);
    const chart = chartOf({ moon: rising });
    const moon = chart?.traces[1];
    expect(moon?.name).toBe('Moon');
    expect(moon?.xs).toHaveLength(16);
    expect(chart?.dots(0)).toHaveLength(1);
    expect(chart?.dots(30)).toHaveLength(2);
    expect(chart?.read(30)).toMatchObject([{}, {}, { name: 'Moon', value: '+15.0' }, { name: 'Moon lit' }]);
    expect(chartOf()?.traces).toHaveLength(1);
  });

  it('names events and lights without one lying on another or on a rule', () => {
    const events = ['sunset', 'moonrise', 'civilDusk', 'solarNoon'] as const;
    const crowded = events.map((name, n) => ({ name, ms: msAt(100 + 5 * n), noEvent: null }));
    for (const widthPx of [300, 600, 1000]) {
      const drawing = chartOf({ widthPx, sky: { events: crowded } })?.overSky;
      expect(drawing?.texts.length).toBeGreaterThan(2);
      const boxes = (drawing?.texts ?? []).map(({ x, y, lines }) => ({
        left: x,
        right: x + Math.max(...lines.map((line) => line.length)) * 6.6,
        top: y - 11,
        bottom: y + 4 + (lines.length - 1) * 15,
      }));
      const clash = boxes.some((box, i) => boxes.slice(i + 1).some((other) => overlap(box, other)));
      expect(clash).toBe(false);
      for (const rule of drawing?.rules ?? []) {
        expect(boxes.some(({ left, right }) => left < rule && rule < right)).toBe(false);
      }
    }
    const words = chartOf()?.overSky?.texts.map(({ lines }) => lines.join(' '));
    expect(words).toEqual(
      expect.arrayContaining(['Sunset 20:32', 'Civil dusk 20:34', 'Golden hour', 'Nautical twilight', 'Sun']),
    );
  });

  it('puts a dot on the curve where the light changes', () => {
    const chart = chartOf();
    const [sunset, dusk] = chart?.overSky?.dots ?? [];
    const [low, high] = chart?.domain ?? [0, 1];
    const y = (deg: number) => (1 - (deg - low) / (high - low)) * (chart?.heightPx ?? 0);
    expect(sunset?.y).toBeCloseTo(y(-0.8333), 6);
    expect(dusk?.y).toBeCloseTo(y(-6), 6);
  });

  it('says it all in words', () => {
    expect(chartOf({ sky: { windows: [] } })?.summary).toBe(
      'The sun goes from 2.0° at azimuth 300° to −10.0° at azimuth 300°. Light: golden hour, civil twilight, nautical twilight. Sunset 20:32. Civil dusk 20:34. The moon is down. No window during the run.',
    );
  });

  it('has its figures in the table', () => {
    expect(chartOf()?.table.map(({ heading, cell }) => `${heading} ${cell(0)}`)).toEqual([
      'Sun altitude, deg 2.0',
      'Sun azimuth, deg 300',
      'Moon altitude, deg −10.0',
    ]);
  });

  it('is none without a place', () => {
    expect(skyChart(runView(scheduleOf(columnsOf(3)), 400), null)).toBeNull();
  });
});
