import { describe, expect, it } from 'vitest';
import { textWidth } from '../../../src/app/charts/names.ts';
import { runView } from '../../../src/app/charts/runView.ts';
import { type SkyBand, skyBand } from '../../../src/app/charts/skyBand.ts';
import { skyChart } from '../../../src/app/charts/skyChart.ts';
import { LANE_PX, lanesHeight, lanesInWords, sunLanes } from '../../../src/app/charts/sunLanes.ts';
import { columnsOf, msAt, scheduleOf, skyColumns, skyRun } from './handMade.ts';

const WORDS = 'Sun on the set 10:53 to 12:10';
const bandOf = (...setHits: [number, number][]): SkyBand => ({
  bands: [],
  events: [],
  windows: null,
  setHits: setHits.map(([fromX, toX]) => ({ fromX, toX, words: WORDS })),
  inFrame: [],
});
const labels = (band: SkyBand, widthPx = 600) =>
  sunLanes(band, 100, widthPx)[0]?.stretches.map(({ label, labelX }) => [label, labelX]);

describe('the rows of the sun', () => {
  it('are none if the sun does neither', () => {
    expect(lanesHeight(bandOf())).toBe(0);
    expect(sunLanes(bandOf(), 100, 600)).toEqual([]);
    expect(lanesInWords(bandOf())).toEqual([]);
  });

  it('say it in the stretch, behind it, or before it', () => {
    expect(labels(bandOf([100, 500]))).toEqual([[WORDS, 116]]);
    expect(labels(bandOf([100, 130]))).toEqual([[WORDS, 138]]);
    expect(labels(bandOf([560, 590]))).toEqual([[WORDS, 552 - textWidth(WORDS)]]);
    expect(labels(bandOf([20, 190]), 200)?.[0]?.[0]).toBe('Sun on the set');
  });

  it('say their name once where no stretch has room for it', () => {
    const crowded = Array.from({ length: 30 }, (_, i): [number, number] => [20 + i * 20, 26 + i * 20]);
    const said = labels(bandOf(...crowded), 625)?.filter(([label]) => label !== '');
    expect(said).toEqual([['Sun on the set', 18]]);
  });

  it('never let words lie over other words or another stretch', () => {
    const band = bandOf([20, 60], [100, 140], [330, 350], [560, 590]);
    const [lane] = sunLanes(band, 100, 600);
    const boxes = (lane?.stretches ?? []).flatMap(({ label, labelX }) =>
      label === '' ? [] : [{ left: labelX, right: labelX + textWidth(label) }],
    );
    expect(boxes.length).toBeGreaterThan(1);
    for (const [i, box] of boxes.entries()) {
      expect(boxes.slice(i + 1).every((other) => other.left >= box.right || other.right <= box.left)).toBe(
        true,
      );
      const hit = band.setHits.some(({ fromX, toX }) => fromX < box.right && toX > box.left);
      expect(hit).toBe(false);
    }
  });
});

describe('the chart of the sky', () => {
  const chartOf = (sky: Parameters<typeof skyRun>[1]) => {
    const columns = columnsOf(31, { sky: skyColumns(Array.from({ length: 31 }, (_, k) => 2 - k * 0.4)) });
    const view = runView(scheduleOf(columns, { sky: skyRun(300, sky) }), 800);
    return skyChart(view, skyBand(view));
  };

  it('grows a row at its foot for each, leaves the curve where it was, and says them', () => {
    const plain = chartOf({});
    const chart = chartOf({
      setHits: [{ fromMs: msAt(20), toMs: msAt(140) }],
      inFrame: [{ firstFrame: 4, lastFrame: 11, nearestDeg: 3, nearestFrame: 8 }],
    });
    expect(chart?.heightPx).toBe((plain?.heightPx ?? 0) + 2 * LANE_PX);
    expect(chart?.traces).toEqual(plain?.traces);
    // The axis goes on below as the plot does: the same height of a pixel, the same top.
    const perPx = ({
      domain: [low, high],
      heightPx,
    }: {
      domain: readonly [number, number];
      heightPx: number;
    }) => (high - low) / heightPx;
    expect(chart && plain && perPx(chart) / perPx(plain)).toBeCloseTo(1);
    expect(chart?.domain[1]).toBe(plain?.domain[1]);
    expect(chart?.summary).toContain('Sun on the set 20:31 to 20:33. Sun in frame 20:31 to 20:32.');
    expect(plain?.summary).not.toContain('Sun on the set');
  });
});
