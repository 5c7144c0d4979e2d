/** Sentences of help, in the order of their numbers; see `src/dev/help-later.ts`. */
declare module 'virtual:help' {
  const sentences: readonly string[];
  export default sentences;
}
