import { useId } from 'react';
import { BarText, Lane, LaneName, NextCycle, Overrun, WholeLane } from './CycleBars.tsx';
import { Dimension, NextOpening, SecondsAxis } from './CycleRules.tsx';
import { cycleLayout } from './cycleLayout.ts';
import type { CycleModel } from './cycleModel.ts';
import { cycleInWords } from './cycleWords.ts';
import { Hatch } from './Hatch.tsx';

/** The two lanes of a cycle against the seconds, drawn for one width. */
export function CycleDrawing({ model, width }: { model: CycleModel; width: number }) {
  const id = useId();
  const layout = cycleLayout(model, width);
  const nextX = layout.x(model.intervalS);
  const freeY = model.longer === 'rig' ? layout.rigY : layout.cameraY;
  return (
    <svg width={width} height={layout.height} role="img" aria-label={cycleInWords(model)}>
      <defs>
        <Hatch id={`${id}spare`} kind="left" />
        <Hatch id={`${id}guard`} kind={model.standing === 'fine' ? 'guard' : 'warning'} />
        <Hatch id={`${id}over`} kind="stop" />
      </defs>
      <LaneName layout={layout} y={layout.cameraY} name="Camera" />
      <LaneName layout={layout} y={layout.rigY} name="Rig" />
      {[layout.cameraY, layout.rigY].map((y) => (
        <rect
          key={y}
          x={layout.left}
          y={y}
          width={nextX - layout.left}
          height={layout.laneHeight}
          fill="var(--sunk)"
        />
      ))}
      <NextCycle layout={layout} x={nextX} />
      <Lane bars={layout.camera} y={layout.cameraY} layout={layout} />
      <Lane bars={layout.rig} y={layout.rigY} layout={layout} />
      {model.rigWord && <WholeLane word={model.rigWord} layout={layout} to={nextX} />}
      {layout.free.map((bar) => (
        <g key={bar.kind}>
          <rect
            x={bar.x}
            y={freeY}
            width={bar.width}
            height={layout.laneHeight}
            fill={`url(#${id}${bar.kind})`}
            stroke={bar.kind === 'guard' && model.standing !== 'fine' ? 'var(--warn)' : 'var(--edge)'}
          />
          <BarText bar={bar} y={freeY} layout={layout} haloed />
        </g>
      ))}
      {model.standing === 'stop' && <Overrun id={`${id}over`} model={model} layout={layout} x={nextX} />}
      <NextOpening layout={layout} x={nextX} />
      <SecondsAxis layout={layout} />
      <Dimension model={model} layout={layout} nextX={nextX} />
    </svg>
  );
}
