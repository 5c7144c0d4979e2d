/** The engine at a prompt: `npm run -s plan -- FILE`. */
import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { intervalLadder } from '../engine/fixes/interval-ladder.ts';
import { remediesOf } from '../engine/fixes/remedies.ts';
import { faultSentence } from '../engine/plan/faults.ts';
import { parsePlan, serialisePlan } from '../engine/plan/parse.ts';
import type { Plan } from '../engine/plan/schema.ts';
import { schedule } from '../engine/schedule.ts';
import type { Schedule } from '../engine/schedule-types.ts';
import { sheetOf } from '../engine/sheet/sheet.ts';
import { fixesJson } from '../outputs/fixes-json.ts';
import { framesCsv } from '../outputs/frames-csv.ts';
import { ladderText } from '../outputs/ladder-text.ts';
import { scheduleJson } from '../outputs/schedule-json.ts';
import { sheetCsv } from '../outputs/sheet-csv.ts';
import { summaryText } from '../outputs/summary.ts';
import { fixedPlan } from './apply.ts';
import { OptionError, type Options, readOptions, USAGE } from './options.ts';
import { writeOutputs } from './write-outputs.ts';

const SHOOTABLE = 0;
const STOPPED = 1;
const AT_FAULT = 2;
/** Not 1, which says that the plan cannot be shot. */
const PROGRAM_AT_FAULT = 3;

/** npm runs its scripts in the project's folder and says where it was called; paths are meant from there. */
const { npm_lifecycle_event: script, INIT_CWD: calledFrom = '.' } = process.env;
const pathFrom = (path: string): string => resolve(script === 'plan' ? calledFrom : '.', path);

const complain = (sentence: string): void => {
  process.stderr.write(`${sentence}\n`);
};

const reason = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Prints in pieces, as fast as they are taken. A reader that has seen enough, such as `head`, is no error. */
async function print(pieces: Iterable<string>): Promise<void> {
  try {
    await pipeline(Readable.from(pieces), process.stdout, { end: false });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EPIPE') throw error;
  }
}

async function readText(file: string): Promise<string> {
  if (file !== '-') return readFile(pathFrom(file), 'utf8');
  process.stdin.setEncoding('utf8');
  let text = '';
  for await (const piece of process.stdin) text += piece;
  return text;
}

function printed(options: Options, plan: Plan, worked: Schedule): Iterable<string> {
  if (options.print === 'fixes') return [fixesJson(plan, worked, remediesOf(plan, worked))];
  if (options.print === 'ladder') return [ladderText(intervalLadder(plan, worked))];
  if (options.print === 'plan') return [serialisePlan(plan)];
  const exposures = options.print === 'sheet' && plan.technique === 'stopMotion';
  if (exposures) return sheetCsv(plan, sheetOf(plan));
  if (options.print === 'frames' || options.print === 'sheet') return framesCsv(plan, worked);
  return [options.print === 'json' ? scheduleJson(plan, worked) : summaryText(plan, worked)];
}

async function run(options: Options): Promise<number> {
  let text: string;
  try {
    text = await readText(options.file);
  } catch (error) {
    complain(`${options.file} cannot be read: ${reason(error)}`);
    return AT_FAULT;
  }
  const parsed = parsePlan(text);
  if (!parsed.ok) {
    for (const fault of parsed.faults) complain(faultSentence(fault));
    return AT_FAULT;
  }
  const plan = options.apply === null ? parsed.plan : fixedPlan(parsed.plan, options.apply);
  const worked = schedule(plan);
  if (options.outDir !== null) {
    try {
      for await (const written of writeOutputs(pathFrom(options.outDir), plan, worked)) complain(written);
    } catch (error) {
      complain(`${options.outDir} cannot be written to: ${reason(error)}`);
      return AT_FAULT;
    }
  }
  await print(printed(options, plan, worked));
  return worked.counts.stop > 0 ? STOPPED : SHOOTABLE;
}

async function main(words: readonly string[]): Promise<number> {
  try {
    const options = readOptions(words);
    if (options !== 'help') return await run(options);
    await print([USAGE]);
    return SHOOTABLE;
  } catch (error) {
    if (!(error instanceof OptionError)) {
      complain(`This should not happen: ${error instanceof Error ? error.stack : error}`);
      return PROGRAM_AT_FAULT;
    }
    complain(error.message);
    complain('--help shows how it is used');
    return AT_FAULT;
  }
}

process.exitCode = await main(process.argv.slice(2));
