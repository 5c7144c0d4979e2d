import type { Load, Source } from '../../engine/plan/schema.ts';
import type { SourceSummary } from '../../engine/schedule-types.ts';
import { MOST_SWAPS } from '../../engine/working/names.ts';
import { FedBy, Segments } from '../fields/ChoiceField.tsx';
import { NumberField } from '../fields/NumberField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { numberText, plural, shortNumber, withUnit } from '../format/numbers.ts';
import { FromKit, KeepInKit } from '../kit/FromKit.tsx';
import { addLoad, addSource, removeLoad, removeSource, renameSource } from '../store/members.ts';
import { usePlan, useSchedule } from '../store/plan.ts';
import { How } from '../working/How.tsx';
import { Pieces } from '../working/Pieces.tsx';
import type { Piece } from '../working/sentence.ts';
import { act } from './act.ts';
import { CapacityCurve } from './CapacityCurve.tsx';
import { Member } from './Member.tsx';
import { Caution, Facts } from './parts.tsx';

function sourceText({ kind, brought, usableWh, drawnWh, needed }: SourceSummary): string {
  if (kind === 'mains') return `mains, ${shortNumber(drawnWh)} Wh`;
  return `${brought} × ${shortNumber(usableWh ?? 0)} Wh usable, needs ${needed}`;
}

/** When fresh packs are due. */
function swapPieces({ name, swapFrames }: SourceSummary): Piece[] {
  if (swapFrames.length === 0) return [];
  const frames = swapFrames
    .slice(0, MOST_SWAPS)
    .flatMap((frame, n): Piece[] => [
      n === 0 ? ' before ' : ', ',
      { text: `frame ${frame}`, of: `sources.${name}.swap.${n + 1}` },
    ]);
  const more = swapFrames.length > MOST_SWAPS ? ' and so on' : '';
  const swaps = { text: plural(swapFrames.length, 'swap'), of: `sources.${name}.swaps` };
  return [', ', swaps, ...frames, more];
}

/** Ways to the workings of what the summary says. */
function SourceWorkings({ summary }: { summary: SourceSummary }) {
  const { name, kind, usableWh, drawnWh, needed } = summary;
  const figure = (of: string, text: string) => (
    <How of={`sources.${name}.${of}`} what={`${text}, ${name}`}>
      {text}
    </How>
  );
  return (
    <p className="hint w2">
      {figure('drawnWh', `${shortNumber(drawnWh)} Wh drawn`)}
      {kind === 'battery' && (
        <>
          , {figure('usableWh', `${shortNumber(usableWh ?? 0)} Wh usable`)},{' '}
          {figure('needed', `${plural(needed, 'pack')} needed`)}
          <Pieces pieces={swapPieces(summary)} />
        </>
      )}
    </p>
  );
}

const FLIGHTS = {
  cabin: 'In cabin baggage only, contacts covered.',
  'ask the carrier': 'More than 100 Wh: ask the carrier first.',
  'not as baggage': 'More than 160 Wh: not as baggage.',
} as const;

const packFacts = ({ name, ratedWh }: SourceSummary): Piece[][] =>
  ratedWh === null
    ? []
    : [
        [
          'One pack is ',
          { text: withUnit(numberText(ratedWh, 1), 'Wh'), of: `sources.${name}.ratedWh` },
          '.',
        ],
      ];

function SourceBlock({ source, index }: { source: Source; index: number }) {
  const path = `power.sources.${index}`;
  const summary = useSchedule().sources[index];
  const flight = summary?.flight;
  return (
    <Member
      name={source.name}
      summary={summary ? sourceText(summary) : ''}
      onRemove={() => act((plan) => removeSource(plan, index))}
    >
      <TextField path={`${path}.name`} wide put={(plan, name) => renameSource(plan, index, name)} />
      <Segments path={`${path}.kind`} />
      {source.kind === 'battery' && (
        <>
          <NumberField path={`${path}.energyWh`} workedOut={(source.voltageV * source.capacityMah) / 1000} />
          <NumberField path={`${path}.count`} />
          <NumberField path={`${path}.voltageV`} />
          <NumberField path={`${path}.capacityMah`} />
          <NumberField path={`${path}.reserveShare`} />
          <NumberField path={`${path}.swapS`} />
          {flight && <Facts of={[[FLIGHTS[flight]], ...packFacts(summary)]} />}
          <CapacityCurve index={index} />
        </>
      )}
      {summary && <SourceWorkings summary={summary} />}
      <KeepInKit kind="source" index={index} name={source.name} />
    </Member>
  );
}

const DRAWS = ['idleW', 'exposingW', 'writingW', 'holdingW', 'movingW', 'alwaysOnW'] as const;

function LoadBlock({ load, index }: { load: Load; index: number }) {
  const path = `power.loads.${index}`;
  return (
    <Member
      name={load.name}
      summary={load.source === null ? 'not counted' : `from ${load.source}`}
      onRemove={() => act((plan) => removeLoad(plan, index))}
    >
      <TextField path={`${path}.name`} wide />
      <FedBy path={`${path}.source`} />
      <NumberField path={`${path}.efficiencyShare`} />
      {DRAWS.map((draw) => (
        <NumberField key={draw} path={`${path}.${draw}`} />
      ))}
    </Member>
  );
}

export function PowerBody() {
  const sources = usePlan((plan) => plan.power.sources);
  const loads = usePlan((plan) => plan.power.loads);
  return (
    <>
      <NumberField path="power.temperatureC" />
      <h4 className="w2">Sources, {plural(sources.length, 'kind')}</h4>
      {sources.map((source, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a source keeps its place while it is renamed
        <SourceBlock key={index} source={source} index={index} />
      ))}
      <div className="row w2">
        <button type="button" className="btn" onClick={() => act(addSource)}>
          Add a source
        </button>
        <FromKit kinds={['source']} />
      </div>
      <h4 className="w2">What draws, besides the axes</h4>
      {loads.map((load, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a load keeps its place while it is renamed
        <LoadBlock key={index} load={load} index={index} />
      ))}
      <button type="button" className="btn" onClick={() => act(addLoad)}>
        Add a load
      </button>
      <Caution>
        Lithium packs: no knocks, no charging in the cold or unwatched; on flights ask the carrier for the
        present rules. Mains outdoors or near water only through a residual-current device and fittings made
        for it, wired by those licensed to.
      </Caution>
    </>
  );
}
