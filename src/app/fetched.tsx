/** Parts of the page that are fetched after the figures. Without a network one of them may be missing: not the page. */
import { type ComponentType, type ExoticComponent, type LazyExoticComponent, lazy } from 'react';
import { fetchChecks } from './store/checker.ts';

/** Says what is missing, and offers to try again. */
export function Missing({ what }: { what: string }) {
  return (
    <p className="panel missing" role="status">
      {what} could not be fetched. Everything that you entered is kept.{' '}
      <button type="button" className="link" onClick={() => location.reload()}>
        Try again
      </button>
    </p>
  );
}

/**
 * A component that is fetched when it is first shown.
 * @param what - its name at the beginning of a sentence; null for what nobody misses
 */
export function fetched<Props extends object>(
  what: string | null,
  load: () => Promise<ComponentType<Props> | ExoticComponent<Props>>,
): LazyExoticComponent<ComponentType<Props>> {
  const missing = () => (what === null ? null : <Missing what={what} />);
  // With the checker, since any of them may change the plan.
  return lazy(() =>
    Promise.all([load(), fetchChecks()])
      .then(([part]) => part)
      .catch(() => missing)
      .then((part) => ({ default: part as ComponentType<Props> })),
  );
}
