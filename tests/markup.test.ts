/** Nothing in the sources turns text into markup or program. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const SOURCES = fileURLToPath(new URL('../src', import.meta.url));

/** What makes markup or program of text (sinks of the Trusted Types specification, and React's own). */
const SINKS =
  /\b(innerHTML|outerHTML|insertAdjacentHTML|dangerouslySetInnerHTML|srcdoc|createContextualFragment|setHTMLUnsafe|parseHTMLUnsafe|DOMParser|document\.write(ln)?|eval|execScript)\b|\bnew Function\b|\b(setTimeout|setInterval)\(\s*['"`]|javascript:/;

test('no source turns text into markup or program', () => {
  const found = readdirSync(SOURCES, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(ts|tsx|mjs)$/.test(file))
    .flatMap((file) =>
      readFileSync(join(SOURCES, file), 'utf8')
        .split('\n')
        .flatMap((line, n) => (SINKS.test(line) ? [`${file}:${n + 1}: ${line.trim()}`] : [])),
    );
  expect(found).toEqual([]);
});

test.each([
  'element.innerHTML = text',
  '<p dangerouslySetInnerHTML={{ __html: text }} />',
  'new Function(text)',
  'eval(text)',
  "setTimeout('go()', 1)",
  '<a href="javascript:go()">',
])('%s would be found', (line) => expect(line).toMatch(SINKS));
