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
  linear: 'Linear',
  smooth: 'Smooth',
  smoother: 'Smoother',
  cubicBezier: 'Bezier',
  ramped: 'Ramped',
};

/** A word of the plan for reading; kinds of axis are their own names. */
export const wordText = (word: string): string => WORDS[word] ?? word.charAt(0).toUpperCase() + word.slice(1);
