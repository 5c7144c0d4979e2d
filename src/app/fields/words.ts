/** The plan's words as they are read on screen. */
const WORDS: Readonly<Record<string, string>> = {
  timeLapse: 'Time-lapse',
  stopMotion: 'Stop-motion',
  startToStart: 'Start to start',
  endToStart: 'End to start',
  first: 'The first',
  second: 'The second',
  still: 'Still',
  moveShootMove: 'Move-shoot-move',
  continuous: 'Continuous',
  together: 'Together',
  inTurn: 'One after another',
  camera: 'Camera',
  trigger: 'Trigger',
  battery: 'Battery',
  mains: 'Mains',
  mm: 'Millimetres',
  deg: 'Degrees',
  hold: 'Hold',
  linear: 'Linear',
  smooth: 'Smooth',
  smoother: 'Smoother',
  cubicBezier: 'Bezier',
  ramped: 'Ramped',
  50: '50 Hz',
  60: '60 Hz',
  onSet: 'On the set',
  offSet: 'Off the set',
  downOrDim: 'Down or dim',
  iso: 'ISO',
  third: '1/3 stop',
  half: '1/2 stop',
  full: '1 stop',
  hand: 'By hand',
  place: 'Its place',
  mass: 'Its mass',
  residual: 'What is left',
};

/** `Nautical dusk` of `nauticalDusk`. */
const apart = (word: string): string =>
  word.charAt(0).toUpperCase() + word.slice(1).replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);

/** A word of the plan for reading; kinds of axis and events of the sky are their own names. */
export const wordText = (word: string): string => WORDS[word] ?? apart(word);
