import { describe, expect, test } from 'vitest';
import type { Plan } from '../../../src/engine/plan/schema.ts';
import { patternOf } from '../../../src/engine/sheet/edits/pattern.ts';
import * as edits from '../../../src/engine/sheet/edits.ts';
import { sheetOf } from '../../../src/engine/sheet/sheet.ts';
import { cuesAt, exposureText, passesOf, tickAt } from '../../../src/engine/sheet/texts.ts';
import { BARE, production, shotOf } from './plans.ts';

/** Each exposure as `hold text passes | cues | done`, whatever of it there is. */
function rows(plan: Plan): string[] {
  const sheet = sheetOf(plan);
  return Array.from({ length: sheet.exposures }, (_, i) => {
    const cues = cuesAt(plan, sheet, i).map(({ text }) => text);
    const note = tickAt(plan, sheet, i)?.note;
    const parts = [
      `${sheet.columns.frames[i]}${exposureText(plan, sheet, i)}`,
      plan.sheet.passes.length > 1 ? passesOf(plan, sheet, i).join('+') : '',
      cues.join(','),
      note ?? '',
    ];
    return parts.filter((part) => part !== '').join(' ');
  });
}

const holdsAndActions = (plan: Plan) =>
  plan.sheet.shots.map(({ actions }) => actions.map(({ holds, frames }) => [frames, ...holds]));

/** A: three on twos, the second says 'look'. B: one on ones, two on twos. */
const plan = production({
  ...BARE,
  shots: [
    {
      ...shotOf(
        { text: 'A', frames: 6, details: [{ exposure: 2, text: 'look' }] },
        { text: 'B', frames: 5, holds: [1, 2, 2] },
      ),
      cues: [
        { kind: 'sound', frame: 4, frames: 1, text: 'knock' },
        { kind: 'sound', frame: 7, frames: 5, text: 'rain' },
      ],
    },
  ],
  ticks: [
    { shot: 1, exposure: 2, atMs: 1, note: 't2' },
    { shot: 1, exposure: 4, atMs: 2, note: 't4' },
  ],
});

test('the plan to begin with', () => {
  expect(rows(plan)).toEqual(['2A', '2look knock t2', '2A', '1B rain t4', '2B rain', '2B rain']);
});

describe('holds', () => {
  test('a longer hold moves on what comes after it', () => {
    const then = edits.setHold(plan, { shot: 1, exposure: 1 }, 4);
    expect(rows(then)).toEqual(['4A', '2look knock t2', '2A', '1B rain t4', '2B rain', '2B rain']);
    expect(then.sheet.shots[0]?.cues.map(({ frame, frames }) => [frame, frames])).toEqual([
      [6, 1],
      [9, 5],
    ]);
  });

  test('a shorter one keeps the cue on its second frame', () => {
    const then = edits.setHold(plan, { shot: 1, exposure: 2 }, 1);
    expect(rows(then)).toEqual(['2A', '1look knock t2', '2A', '1B rain t4', '2B rain', '2B rain']);
  });

  test('two cues of a kind in an exposure that gets too short for them are pushed on', () => {
    const shots = [
      {
        ...shotOf({ text: 'A', frames: 6 }),
        cues: [
          { kind: 'sound', frame: 1, text: 'tick' },
          { kind: 'sound', frame: 2, text: 'tock' },
        ],
      },
    ];
    const then = edits.setHold(production({ ...BARE, shots }), { shot: 1, exposure: 1 }, 1);
    expect(rows(then)).toEqual(['1A tick', '2A tock', '2A']);
  });

  test('a range over actions, on ones', () => {
    const then = edits.retime(plan, { first: 2, last: 6 }, 1);
    expect(rows(then)).toEqual(['2A', '1look knock t2', '1A', '1B rain t4', '1B rain', '1B rain']);
    expect(holdsAndActions(then)).toEqual([
      [
        [4, 2, 1, 1],
        [3, 1],
      ],
    ]);
  });

  test('an action in seconds stays in seconds as long as it stays as long', () => {
    const seconds = production({
      ...BARE,
      shots: [shotOf({ lengthIn: 'seconds', lengthS: 0.5, frames: 99 })],
    });
    const same = edits.retime(seconds, { first: 1, last: 6 }, 2);
    expect(same.sheet.shots[0]?.actions[0]).toMatchObject({ lengthIn: 'seconds', lengthS: 0.5 });
    const longer = edits.setHold(seconds, { shot: 1, exposure: 6 }, 3);
    expect(longer.sheet.shots[0]?.actions[0]).toMatchObject({ lengthIn: 'frames', frames: 13 });
  });

  test.each([
    [[2, 2, 2, 2], [2], [2]],
    [[2, 2, 2, 1], [2, 2, 2, 1], [2]],
    [
      [2, 2, 1, 2],
      [2, 2, 1],
      [2, 2, 1],
    ],
    [
      [1, 2, 1, 2, 1],
      [1, 2],
      [1, 2],
    ],
    [
      [1, 2, 1, 1],
      [1, 2, 1],
      [1, 2],
    ],
    [
      [1, 1, 2],
      [1, 1, 2],
      [1, 1, 2],
    ],
    [
      [2, 1, 2, 2],
      [2, 1, 2],
      [2, 1, 2],
    ],
    [[3], [3], [3]],
    [
      [1, 2],
      [1, 2],
      [1, 2],
    ],
    [[2, 1], [2, 1], [2]],
    [[], [], []],
  ])('%j is said by %j, by %j if its last was cut short', (holds, pattern, short) => {
    expect(patternOf(holds)).toEqual(pattern);
    expect(patternOf(holds, true)).toEqual(short);
  });

  test('a last exposure that was cut short stays so, one that was made shorter is what was asked for', () => {
    const odd = production({ ...BARE, shots: [shotOf({ text: 'A', frames: 7 })] });
    expect(holdsAndActions(edits.insertAfter(odd, { shot: 1, exposure: 1 }, 1))).toEqual([[[9, 2]]]);
    const even = production({ ...BARE, shots: [shotOf({ text: 'A', frames: 8 })] });
    const then = edits.setHold(even, { shot: 1, exposure: 4 }, 1);
    expect(sheetOf(then).totals.findings).toEqual([]);
  });
});

describe('exposures', () => {
  test('are put in after one, held as long, and what refers to others goes with them', () => {
    const then = edits.insertAfter(plan, { shot: 1, exposure: 1 }, 2);
    expect(rows(then)).toEqual([
      '2A',
      '2A',
      '2A',
      '2look knock t2',
      '2A',
      '1B rain t4',
      '2B rain',
      '2B rain',
    ]);
    expect(then.sheet.ticks.map(({ exposure }) => exposure)).toEqual([4, 6]);
  });

  test('before the first, too', () => {
    expect(rows(edits.insertAfter(plan, { shot: 1, exposure: 0 }, 1)).slice(0, 3)).toEqual([
      '2A',
      '2A',
      '2look knock t2',
    ]);
  });

  test('are taken out with what refers to them', () => {
    const then = edits.removeExposures(plan, { first: 2, last: 4 });
    expect(rows(then)).toEqual(['2A', '2B rain', '2B rain']);
    expect(then.sheet.ticks).toEqual([]);
    expect(then.sheet.shots[0]?.cues).toEqual([{ kind: 'sound', frame: 3, frames: 4, text: 'rain' }]);
  });

  test('all of an action: it goes too; all of a shot: the shot stays', () => {
    expect(rows(edits.removeExposures(plan, { first: 1, last: 3 }))).toEqual([
      '1B rain t4',
      '2B rain',
      '2B rain',
    ]);
    const empty = edits.removeExposures(plan, { first: 1, last: 6 });
    expect(empty.sheet.shots).toMatchObject([{ actions: [], cues: [] }]);
    expect(rows(edits.insertAfter(empty, { shot: 1, exposure: 0 }, 2))).toEqual(['2', '2']);
  });

  test('are said once more, texts and holds, without their ticks and cues', () => {
    const then = edits.duplicate(plan, { first: 2, last: 4 });
    expect(rows(then)).toEqual([
      '2A',
      '2look knock t2',
      '2A',
      '1B rain t4',
      '2look rain',
      '2A rain',
      '1B rain',
      '2B rain',
      '2B rain',
    ]);
  });

  test('over several shots', () => {
    const two = production({
      ...BARE,
      shots: [shotOf({ text: 'A', frames: 4 }), shotOf({ text: 'B', frames: 4 })],
    });
    expect(rows(edits.removeExposures(two, { first: 2, last: 3 }))).toEqual(['2A', '2B']);
    expect(rows(edits.retime(two, { first: 2, last: 3 }, 1))).toEqual(['2A', '1A', '1B', '2B']);
    expect(rows(edits.duplicate(two, { first: 2, last: 3 }))).toEqual(['2A', '2A', '2A', '2B', '2B', '2B']);
  });

  test('say what happens, and what their action says if that is the same', () => {
    const said = edits.setText(plan, { shot: 1, exposure: 4 }, 'drop');
    expect(rows(said)[3]).toBe('1drop rain t4');
    const unsaid = edits.setText(
      edits.setText(said, { shot: 1, exposure: 4 }, 'B'),
      { shot: 1, exposure: 2 },
      'A',
    );
    expect(unsaid.sheet.shots[0]?.actions.flatMap(({ details }) => details)).toEqual([]);
  });

  test('have passes of their own', () => {
    const lit = {
      ...plan,
      sheet: {
        ...plan.sheet,
        passes: production({ passes: [{ name: 'Key' }, { name: 'Rim' }] }).sheet.passes,
      },
    };
    const then = edits.setPasses(lit, { shot: 1, exposure: 1 }, ['Rim']);
    expect(rows(then).slice(0, 2)).toEqual(['2A Rim', '2look Key+Rim knock t2']);
    expect(rows(edits.setPasses(then, { shot: 1, exposure: 1 }, null))).toEqual(rows(lit));
    expect(() => edits.setPasses(lit, { shot: 1, exposure: 1 }, ['Fog'])).toThrow(/Fog.*"Key", "Rim"/);
    // Copied into an action that has others.
    const own = edits.setAction(then, 1, 2, { passes: ['Key'] });
    expect(rows(edits.duplicate(own, { first: 2, last: 4 })).slice(4, 7)).toEqual([
      '2look Key+Rim rain',
      '2A Key+Rim rain',
      '1B Key rain',
    ]);
  });
});

describe('cues', () => {
  const cues = (then: Plan) =>
    then.sheet.shots[0]?.cues.map(({ kind, frame, frames, text }) => `${kind} ${frame}+${frames} ${text}`);

  test('begin with an exposure', () => {
    expect(
      cues(edits.setCue(plan, { shot: 1, exposure: 3 }, { kind: 'light', text: 'dim', frames: 2 })),
    ).toContain('light 5+2 dim');
  });

  test('are changed where one of the kind begins, taken away with an empty text', () => {
    const changed = edits.setCue(plan, { shot: 1, exposure: 2 }, { kind: 'sound', text: 'bang' });
    expect(cues(changed)).toEqual(['sound 7+5 rain', 'sound 4+1 bang']);
    expect(cues(edits.setCue(plan, { shot: 1, exposure: 2 }, { kind: 'sound', text: '' }))).toEqual([
      'sound 7+5 rain',
    ]);
  });

  test('cut off the one of their kind that is still going on, and are cut off by the next', () => {
    expect(
      cues(edits.setCue(plan, { shot: 1, exposure: 5 }, { kind: 'sound', text: 'thunder', frames: 99 })),
    ).toEqual(['sound 4+1 knock', 'sound 7+1 rain', 'sound 8+4 thunder']);
    expect(
      cues(edits.setCue(plan, { shot: 1, exposure: 1 }, { kind: 'sound', text: 'hush', frames: 99 })),
    ).toContain('sound 1+3 hush');
  });
});

describe('shots and actions', () => {
  const two = production({
    ...BARE,
    shots: [
      { ...shotOf({ text: 'A', frames: 2 }), name: 'a' },
      { ...shotOf({ text: 'B', frames: 2 }), name: 'b' },
      { ...shotOf({ text: 'C', frames: 2 }), name: 'c' },
    ],
    ticks: [
      { shot: 1, exposure: 1, atMs: 1, note: 'a' },
      { shot: 3, exposure: 1, atMs: 1, note: 'c' },
    ],
  });

  test('a shot is put in, moved and taken out with its ticks', () => {
    expect(rows(edits.addShot(two, 1)).filter((row) => row !== '2')).toEqual(['2A a', '2B', '2C c']);
    expect(edits.addShot(two, 1).sheet.shots.map(({ name }) => name)).toEqual(['a', 'Shot 4', 'b', 'c']);
    expect(rows(edits.moveShot(two, 1, 3))).toEqual(['2B', '2C c', '2A a']);
    expect(rows(edits.moveShot(two, 3, 1))).toEqual(['2C c', '2A a', '2B']);
    expect(rows(edits.removeShot(two, 1))).toEqual(['2B', '2C c']);
    expect(edits.nameShot(two, 2, 'x').sheet.shots[1]?.name).toBe('x');
  });

  test('the only shot stays', () => {
    expect(() => edits.removeShot(plan, 1)).toThrow(edits.Refused);
  });

  test('an action put in moves on what comes after it', () => {
    const then = edits.addAction(plan, 1, 1);
    expect(rows(then).slice(3, -3)).toEqual(new Array(12).fill('2'));
    expect(rows(then).slice(-3)).toEqual(['1B rain t4', '2B rain', '2B rain']);
    expect(rows(edits.addAction(plan, 1, 2)).slice(0, 6)).toEqual(rows(plan));
    expect(rows(edits.addAction(plan, 1, 0)).slice(12)).toEqual(rows(plan));
  });

  test('an action taken out', () => {
    expect(rows(edits.removeAction(plan, 1, 1))).toEqual(['1B rain t4', '2B rain', '2B rain']);
  });

  test('an action changed: its exposures keep their numbers', () => {
    const then = edits.setAction(plan, 1, 1, { frames: 3, holds: [1] });
    expect(rows(then)).toEqual(['1A', '1look knock t2', '1A', '1B rain t4', '2B rain', '2B rain']);
    expect(() => edits.setAction(plan, 1, 1, { frames: 1 })).toThrow(/holds\[0\]/);
  });

  test('cut in two and made one again, nothing else changes', () => {
    const cut = edits.splitAction(plan, { shot: 1, exposure: 3 });
    expect(holdsAndActions(cut)).toEqual([
      [
        [4, 2],
        [2, 2],
        [5, 1, 2, 2],
      ],
    ]);
    expect(rows(cut)).toEqual(rows(plan));
    expect(rows(edits.mergeWithNext(cut, 1, 1))).toEqual(rows(plan));
    const all = edits.mergeWithNext(plan, 1, 1);
    expect(all.sheet.shots[0]?.actions).toHaveLength(1);
    expect(rows(all)).toEqual(rows(plan));
    expect(() => edits.splitAction(plan, { shot: 1, exposure: 4 })).toThrow(edits.Refused);
    expect(() => edits.mergeWithNext(plan, 1, 2)).toThrow(edits.Refused);
  });
});

describe('while shooting', () => {
  test('a range is ticked, what is ticked stays as it is, and ticks are taken back', () => {
    const done = edits.tick(plan, { first: 1, last: 5 }, 99);
    expect(done.sheet.ticks.map(({ exposure, atMs }) => [exposure, atMs])).toEqual([
      [2, 1],
      [4, 2],
      [1, 99],
      [3, 99],
      [5, 99],
    ]);
    expect(edits.untick(done, { first: 2, last: 6 }).sheet.ticks).toMatchObject([{ exposure: 1 }]);
  });

  test('retakes and notes belong to what is done', () => {
    const then = edits.setNote(
      edits.setRetakes(plan, { shot: 1, exposure: 2 }, 3),
      { shot: 1, exposure: 2 },
      'bumped',
    );
    expect(then.sheet.ticks[0]).toMatchObject({ retakes: 3, note: 'bumped', atMs: 1 });
    expect(() => edits.setRetakes(plan, { shot: 1, exposure: 1 }, 1)).toThrow(/not done yet/);
  });
});

describe('axes', () => {
  const slide = { name: 'Slide', fullStepsPerTurn: 200, microsteps: 16, unitsPerTurn: 40 };
  const moving = production(
    { ...BARE, shots: [shotOf({ text: 'A', frames: 24 })] },
    {
      rig: { axes: [slide] },
      move: {
        mode: 'moveShootMove',
        tracks: [
          {
            axis: 'Slide',
            keyframes: [
              { share: 0, position: 0, ease: { kind: 'linear' } },
              { share: 1, position: 230, ease: { kind: 'linear' } },
            ],
          },
        ],
      },
    },
  );
  const positions = (then: Plan) =>
    Array.from(sheetOf(then).columns.axes[0]?.steps ?? [], (steps) => steps / 80);

  test('a shot’s own tracks go before the plan’s', () => {
    const own = structuredClone(moving);
    const keyframe = own.move.tracks[0]?.keyframes[0];
    const [first] = own.sheet.shots;
    if (!keyframe || !first) throw new Error('no keyframe');
    first.tracks = [{ axis: 'Slide', thereAndBack: false, keyframes: [{ ...keyframe, position: 7 }] }];
    expect(positions(own)).toEqual(new Array(12).fill(7));
  });

  test('stand where the tracks have them at the first frame of each exposure', () => {
    expect(positions(moving)).toEqual([0, 20, 40, 60, 80, 100, 120, 140, 160, 180, 200, 220]);
  });

  test('a position at an exposure is a keyframe of the shot, which first gets the plan’s tracks', () => {
    const then = edits.setAxisPosition(moving, { shot: 1, exposure: 6 }, 'Slide', 200);
    expect(positions(then).slice(0, 6)).toEqual([0, 40, 80, 120, 160, 200]);
    expect(then.sheet.shots[0]?.tracks[0]?.keyframes).toMatchObject([
      { at: 'share', share: 0 },
      { at: 'frame', frame: 11, position: 200, ease: { kind: 'linear' } },
      { at: 'share', share: 1 },
    ]);
    expect(then.move).toBe(moving.move);
    const again = edits.setAxisPosition(then, { shot: 1, exposure: 6 }, 'Slide', 100);
    expect(positions(again)).toEqual(positions(moving));
    expect(again.sheet.shots[0]?.tracks[0]?.keyframes).toHaveLength(3);
  });

  test('a keyframe at a frame goes with its exposure', () => {
    const then = edits.setAxisPosition(moving, { shot: 1, exposure: 6 }, 'Slide', 200);
    const frames = (changed: Plan) => changed.sheet.shots[0]?.tracks[0]?.keyframes[1]?.frame;
    expect(frames(edits.insertAfter(then, { shot: 1, exposure: 1 }, 3))).toBe(17);
    expect(frames(edits.setHold(then, { shot: 1, exposure: 1 }, 1))).toBe(10);
    expect(frames(edits.removeExposures(then, { first: 1, last: 6 }))).toBe(1);
  });

  test('a track that comes back is written out, and stays where it was elsewhere', () => {
    const back = structuredClone(moving);
    for (const track of back.move.tracks) track.thereAndBack = true;
    const before = positions(back);
    const then = edits.setAxisPosition(back, { shot: 1, exposure: 12 }, 'Slide', before[11] as number);
    expect(then.sheet.shots[0]?.tracks[0]?.thereAndBack).toBe(false);
    expect(positions(then)).toEqual(before);
  });

  test('an axis that does not move yet', () => {
    const still = { ...moving, move: { ...moving.move, tracks: [] } };
    expect(positions(edits.setAxisPosition(still, { shot: 1, exposure: 3 }, 'Slide', 5))).toEqual(
      new Array(12).fill(5),
    );
    expect(() => edits.setAxisPosition(still, { shot: 1, exposure: 3 }, 'Tilt', 5)).toThrow(/"Tilt".*Slide/);
    expect(() => edits.setAxisPosition(still, { shot: 1, exposure: 3 }, 'Slide', Number.NaN)).toThrow(/NaN/);
  });
});

test('a plan without shots gets those that it stands for', () => {
  const bare = production({ ...BARE }, { title: 'Kettle', pacing: { workedOut: 'event', clipLengthS: 0.5 } });
  const then = edits.setText(bare, { shot: 1, exposure: 2 }, 'steam');
  expect(then.sheet.shots).toMatchObject([{ name: 'Kettle' }]);
  expect(rows(then)).toEqual(['2', '2steam', '2', '2', '2', '2']);
  expect(bare.sheet.shots).toEqual([]);
});

test.each<[string, () => Plan, RegExp]>([
  [
    'a shot that is not there',
    () => edits.setHold(plan, { shot: 2, exposure: 1 }, 2),
    /shot: found 2; .*1 to 1/,
  ],
  [
    'an exposure that is not there',
    () => edits.setHold(plan, { shot: 1, exposure: 7 }, 2),
    /exposure: found 7; .*1 to 6/,
  ],
  ['no hold', () => edits.setHold(plan, { shot: 1, exposure: 1 }, 0), /hold: found 0/],
  ['a hold and a half', () => edits.retime(plan, { first: 1, last: 2 }, 1.5), /hold: found 1.5/],
  [
    'a range beyond the end',
    () => edits.removeExposures(plan, { first: 5, last: 9 }),
    /last exposure: found 9; .*5 to 6/,
  ],
  ['ten million exposures', () => edits.insertAfter(plan, { shot: 1, exposure: 1 }, 10_000_000), /10000000/],
  ['a text too long', () => edits.setText(plan, { shot: 1, exposure: 1 }, 'x'.repeat(201)), /201 characters/],
])('refuses %s', (_, edit, message) => {
  expect(edit).toThrow(edits.Refused);
  expect(edit).toThrow(message);
});
