import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { SCHEMA_FILE, schemaText } from '../../src/dev/publish-schema.ts';
import { fieldInfo } from '../../src/engine/plan/faults.ts';

const published = JSON.parse(schemaText());

describe('the published JSON Schema', () => {
  test('is the one that the table of fields gives: run `npm run build` after changing a field', () => {
    expect(readFileSync(SCHEMA_FILE, 'utf8')).toBe(schemaText());
  });

  test('carries title, unit, range and default of a field', () => {
    const { description, minimum, maximum } = fieldInfo(['cycle', 'guardS']);
    expect(published.properties.cycle.properties.guardS).toMatchObject({
      type: 'number',
      title: 'Guard',
      unit: 's',
      description,
      minimum,
      maximum,
    });
  });

  test('demands the two fields by which a plan file is known, and refuses unknown ones', () => {
    expect(published.required).toEqual(['format', 'version']);
    expect(published.additionalProperties).toBe(false);
    expect(published.$id).toBeUndefined();
  });
});
