import { expect, test } from 'vitest';
import { finite, type Row } from './rows.ts';

/** One test a row; its title is the citation. */
export function checkRows(rows: readonly Row[]): void {
  test.each(rows.map((row) => [`${row.reference}: ${row.quantity}, ${row.regime}`, row] as const))(
    '%s',
    (_title, row) => {
      expect(row.cases).toBeGreaterThan(0);
      expect(finite(row.worst, row.quantity), `worst at ${row.worstAt}`).toBeLessThanOrEqual(row.bound);
    },
  );
}
