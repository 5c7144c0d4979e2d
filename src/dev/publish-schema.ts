/**
 * Writes the JSON Schema of the plan file to `public/plan.schema.json`, from the one table of fields.
 * The file is committed, so that a change of the plan's format shows in review; a test compares the two.
 */
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import * as z from 'zod/mini';
import { fieldRegistry } from '../engine/plan/fields.ts';
import { PLAN_VERSION, planSchema } from '../engine/plan/schema.ts';

/** Where the published schema stands. */
export const SCHEMA_FILE = new URL('../../public/plan.schema.json', import.meta.url);

/** Text of the JSON Schema (draft 2020-12) of a plan file as it may be written: fields with defaults may be left out. */
export function schemaText(): string {
  const { $schema, ...fields } = z.toJSONSchema(planSchema, { metadata: fieldRegistry, io: 'input' });
  const schema = {
    $schema,
    title: `Escapement plan, version ${PLAN_VERSION}`,
    description:
      'One shoot on a motorised camera rig. Units stand in the names, or in the keyword unit; ' +
      'figures of an axis are in the unit of that axis, mm or deg.',
    ...fields,
    // Defaults fill in every other field, but a file says what it is.
    required: ['format', 'version'],
  };
  return `${JSON.stringify(schema, null, 2)}\n`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) writeFileSync(SCHEMA_FILE, schemaText());
