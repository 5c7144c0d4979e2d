import { expect, test } from 'vitest';
import { fileStem } from '../../src/outputs/file-name.ts';

test.each([
  ['Harbour at dusk', 'harbour-at-dusk'],
  ['  ../../etc/passwd ', 'etc-passwd'],
  ['C:\\x|y?*"<>', 'c-x-y'],
  ['Hafen bei Dämmerung', 'hafen-bei-dämmerung'],
  ['夕暮れの港', '夕暮れの港'],
  ['', 'plan'],
  ['...', 'plan'],
  ['CON', 'con-plan'],
  ['a'.repeat(100), 'a'.repeat(60)],
  [`${'a'.repeat(59)} b`, 'a'.repeat(59)],
])('%j is saved as %j', (title, stem) => expect(fileStem(title)).toBe(stem));
