/** What the kit says and which piece of gear is open: it belongs to the dialog. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import type { Standing } from '../icons.tsx';

export interface Answer {
  text: string;
  act: () => void;
}

/** Something that was done, or a question. */
export interface Talk {
  standing: Standing;
  text: string;
  /** More lines, such as what was left out. */
  lines: readonly string[];
  answers: readonly Answer[];
  question: boolean;
}

interface Ui {
  talk: Talk | null;
  openId: string | null;
}

const uiStore = createStore<Ui>(() => ({ talk: null, openId: null }));

export const useTalk = (): Talk | null => useStore(uiStore, (ui) => ui.talk);

export const hush = (): void => uiStore.setState({ talk: null });

/** Says what was done, and offers to take it back. */
export const say = (text: string, undo: (() => void) | null = null, lines: readonly string[] = []): void => {
  const takeBack = () => {
    undo?.();
    say('Taken back.');
  };
  const answers = undo ? [{ text: 'Undo', act: takeBack }] : [];
  uiStore.setState({ talk: { standing: 'fine', text, lines, answers, question: false } });
};

/** Says why something was not done. */
export const refuse = (text: string, lines: readonly string[] = []): void =>
  uiStore.setState({ talk: { standing: 'stop', text, lines, answers: [], question: false } });

/** Asks before anything is overwritten; the last answer leaves everything as it is. */
export const ask = (text: string, answers: readonly Answer[]): void =>
  uiStore.setState({
    talk: {
      standing: 'note',
      text,
      lines: [],
      answers: [...answers, { text: 'Leave it', act: hush }],
      question: true,
    },
  });

export const useOpen = (id: string): boolean => useStore(uiStore, (ui) => ui.openId === id);

/** Opens a piece of gear and closes the one that was open; null closes. */
export const openItem = (openId: string | null): void => uiStore.setState({ openId });
