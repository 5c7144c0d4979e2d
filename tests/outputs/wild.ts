/** A plan that says far more than two pages hold. */

const AXES = Array.from({ length: 12 }, (_, n) => ({
  name: `Motor number ${n + 1}`,
  ...(n % 3 === 2 ? { unit: 'deg', unitsPerTurn: 360 } : { unit: 'mm' }),
  travelMin: -5000,
  travelMax: 5000,
}));

const keyframes = (n: number) =>
  Array.from({ length: 60 }, (_, k) => ({
    share: k / 59,
    position: Math.round(300 * Math.sin((k * (n + 1)) / 9)),
    ease: { kind: 'linear' },
  }));

/** Six days at a pier: hundreds of changes by hand and by the camera, twelve axes, twenty swaps and cards. */
export const WILD = {
  title: 'Wild tides',
  pacing: { workedOut: 'clip', eventS: 6 * 86_400, intervalS: 30 },
  start: { date: '2036-08-08', time: '15:00' },
  place: { name: 'Old pier', latitudeDeg: 43.3, longitudeDeg: 6.4, zone: 'Europe/Paris' },
  light: { kind: 'sky' },
  exposure: {
    shutterS: 1 / 500,
    ramp: {
      used: true,
      steps: [
        { setting: 'shutter', to: 1, step: 'third', by: 'hand' },
        { setting: 'iso', to: 1600, step: 'third', by: 'camera' },
        { setting: 'shutter', to: 8, step: 'third', by: 'hand' },
      ],
    },
  },
  rig: { axes: AXES },
  move: {
    mode: 'moveShootMove',
    tracks: AXES.map(({ name }, n) => ({ axis: name, keyframes: keyframes(n) })),
  },
  power: {
    sources: [
      { name: 'Camera pack', energyWh: 60, count: 20 },
      { name: 'Rig pack', energyWh: 100, count: 4 },
    ],
    loads: [
      { name: 'Body', source: 'Camera pack', alwaysOnW: 5 },
      { name: 'Motors', source: 'Rig pack', alwaysOnW: 2 },
    ],
  },
  storage: {
    cards: Array.from({ length: 6 }, (_, n) => ({ name: `Card ${n + 1}`, cardBytes: 160e9 })),
    copies: 2,
  },
  camera: { frameBytes: 45e6 },
};
