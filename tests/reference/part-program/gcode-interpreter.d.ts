/** The package comes without types; of it this much is used. */
declare module 'gcode-interpreter' {
  export default class Interpreter {
    constructor(options: { defaultHandler: (command: string, words: Record<string, number>) => void });
    loadFromStringSync(text: string): unknown[];
  }
}
