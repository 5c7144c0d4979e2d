/** Start: the plan shown last, or the demo asked for, or the first demo; then the page. */
import { StrictMode } from 'react';
import { createRoot, type Root } from 'react-dom/client';
import type { Plan } from '../engine/plan/schema.ts';
import { App } from './App.tsx';
import { Missing } from './fetched.tsx';
import { Safety } from './Safety.tsx';
import { demoOf, demoPlan, FIRST_DEMO, openDemo, showPartMissing } from './store/opening.ts';
import { startWith } from './store/plan.ts';
import { setSaving } from './store/saving.ts';
import { keptPlan, tabDemo } from './store/shelf.ts';
import './styles/index.css';

/** The plan to begin with; null leaves the default one. */
const firstPlan = async (): Promise<Plan | null> =>
  (await demoPlan(demoOf(tabDemo()))) ?? (await keptPlan()) ?? demoPlan(FIRST_DEMO);

/** Begins with the plan shown last; the address may ask for a demo in its place, as a step that can be undone. */
async function openFirst(): Promise<void> {
  const plan = await firstPlan();
  if (plan) startWith(plan);
  const asked = new URLSearchParams(location.search).get('demo');
  if (asked === null) return;
  await openDemo(asked);
  // Asked for once: a reload keeps what was edited since.
  history.replaceState(null, '', location.pathname + location.hash);
}

/** A plan may come in the fragment of the address; what reads it is fetched only then. */
function openLinked(): void {
  if (!/^#p\d/.test(location.hash)) return;
  import('./share/openLink.ts').then(
    ({ openLink }) => openLink(),
    () => showPartMissing('The link'),
  );
}

async function start(root: Root): Promise<void> {
  // Fetched beside: nothing has to be written before something has been typed.
  const keeping = import('./store/keeping.ts');
  try {
    await openFirst();
  } catch {
    // What is kept could not be checked. Another plan would be kept in its place.
    root.render(<Missing what="What checks the plan that you kept" />);
    return;
  }
  keeping.then((part) => part.startKeeping()).catch(() => setSaving('refused'));
  addEventListener('hashchange', openLinked);
  openLinked();
  root.render(
    <StrictMode>
      <Safety>
        <App />
      </Safety>
    </StrictMode>,
  );
}

const place = document.getElementById('root');
if (place) void start(createRoot(place));
