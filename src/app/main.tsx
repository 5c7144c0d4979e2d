/** Start: the plan kept last, or the demo asked for, or the first demo; then the page. */
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { parsePlan } from '../engine/plan/parse.ts';
import type { Plan } from '../engine/plan/schema.ts';
import { App } from './App.tsx';
import { Safety } from './Safety.tsx';
import { keptPlan, startKeeping } from './store/autosave.ts';
import { DEMOS, demoText, openDemo } from './store/files.ts';
import { startWith } from './store/plan.ts';
import './styles/index.css';

const readable = (text: string | null): Plan | null => {
  const read = text === null ? null : parsePlan(text);
  return read?.ok ? read.plan : null;
};

/** The plan to begin with; null leaves the default one. */
async function firstPlan(): Promise<Plan | null> {
  return readable(await keptPlan()) ?? readable(await demoText(DEMOS[0].name));
}

async function start(): Promise<void> {
  const plan = await firstPlan();
  if (plan) startWith(plan);
  const asked = new URLSearchParams(location.search).get('demo');
  if (asked !== null) {
    await openDemo(asked);
    // Asked for once: a reload keeps what was edited since.
    history.replaceState(null, '', location.pathname + location.hash);
  }
  startKeeping();
  const root = document.getElementById('root');
  if (!root) return;
  createRoot(root).render(
    <StrictMode>
      <Safety>
        <App />
      </Safety>
    </StrictMode>,
  );
}

void start();
