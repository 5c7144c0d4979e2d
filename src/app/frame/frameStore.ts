/** The test frame that this tab looks at: no part of the plan, not undone, not saved. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { TestFrame } from './testFrame.ts';

/** Nothing yet, being read, read, or why not. */
export type FrameState = null | { reading: string } | { frame: TestFrame } | { error: string };

const frameStore = createStore<{ state: FrameState }>(() => ({ state: null }));

/** What there is of a test frame. */
export const useFrame = (): FrameState => useStore(frameStore, ({ state }) => state);

let newest: File | null = null;

/** Reads a photograph that was picked or dropped; the reader comes with the first one. */
export async function takeFrame(file: File): Promise<void> {
  newest = file;
  frameStore.setState({ state: { reading: file.name } });
  const read = await import('./readFrame.ts').then(
    ({ readFrame }) => readFrame(file),
    () => ({
      error: `${file.name} was not read: the reader could not be loaded. Try again with a connection.`,
    }),
  );
  if (newest === file) frameStore.setState({ state: 'error' in read ? read : { frame: read } });
}
