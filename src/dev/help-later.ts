/**
 * Keeps the fields' sentences of help out of the script that opens the page.
 *
 * In the sources each field has its sentence beside it, in one table. The page needs the table at once, to check a plan,
 * and the sentences only with the forms: the build puts a number in the place of each, and the sentences into a module
 * of their own.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

const FOLDER = fileURLToPath(new URL('../engine/plan', import.meta.url));
const TABLE = /[\\/]engine[\\/]plan[\\/](?:schema|(?:[a-z]+-)?fields)\.ts$/;
/** A sentence: a literal that begins like one and ends with a full stop. */
const SENTENCE = /'([A-Z0-9](?:[^'\\\n]|\\.){10,}\.)'/g;
const MODULE = 'virtual:help';

/** Every sentence of the table. */
function sentences(): string[] {
  const files = readdirSync(FOLDER).map((file) => join(FOLDER, file));
  const texts = files
    .filter((file) => TABLE.test(file))
    .flatMap((file) => [...readFileSync(file, 'utf8').matchAll(SENTENCE)].map(([, text]) => text ?? ''));
  return [...new Set(texts)];
}

/** The plugin; `virtual:help` is the list of sentences, empty unless the page is built. */
export function helpLater(): Plugin {
  let texts: string[] = [];
  let building = false;
  return {
    name: 'help-later',
    enforce: 'pre',
    configResolved(config) {
      building = config.command === 'build';
      if (building) texts = sentences();
    },
    resolveId: (id) => (id === MODULE ? `\0${MODULE}` : null),
    load: (id) => (id === `\0${MODULE}` ? `export default ${JSON.stringify(texts)};` : null),
    transform(code, id) {
      if (!building || !TABLE.test(id)) return null;
      return code.replace(SENTENCE, (_, text: string) => `'#${texts.indexOf(text)}'`);
    },
  };
}
