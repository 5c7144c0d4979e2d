import { csvParse } from 'd3-dsv';
import { describe, expect, test } from 'vitest';
import { type LogLine, logCsv } from '../../src/outputs/log-csv.ts';

const LINES: LogLine[] = [
  {
    at: '2026-08-08T20:32:35+02:00',
    phone: '2026-08-08T18:32:35.120Z',
    kind: 'started',
    frame: null,
    text: 'Frame 1 fired',
  },
  {
    at: '2026-08-08T21:00:00+02:00',
    phone: '2026-08-08T19:00:00.000Z',
    kind: 'note',
    frame: 118,
    text: '=SUM(A1), "gust"\r\nfrom the left',
  },
];

describe('the log as a table', () => {
  test('is read back by an independent parser (d3-dsv), and never holds a formula', () => {
    const rows = csvParse(logCsv(LINES));
    expect(rows.columns).toEqual(['at', 'phone', 'kind', 'frame', 'what']);
    expect(rows.map(({ frame }) => frame)).toEqual(['', '118']);
    expect(rows.map(Object.values)[1]?.at(-1)).toBe('\'=SUM(A1), "gust"\r\nfrom the left');
  });

  test('ends every record with CRLF (RFC 4180, section 2)', () => {
    expect(logCsv([])).toBe('at,phone,kind,frame,what\r\n');
    expect(logCsv(LINES.slice(0, 1)).split('\r\n')).toHaveLength(3);
  });
});
