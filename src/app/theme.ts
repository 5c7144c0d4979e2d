/** Light, dark and dim. `public/theme.js` sets the remembered one before the first paint. */
import { useSyncExternalStore } from 'react';

export const THEMES = ['light', 'dark', 'dim'] as const;
export type Theme = (typeof THEMES)[number];

const KEY = 'escapement-theme';

/** Colour of the browser's own bar, as `--paper` of each theme. */
const PAPER: Readonly<Record<Theme, string>> = { light: '#FAF8F3', dark: '#14181E', dim: '#070302' };

function presentTheme(): Theme {
  const set = document.documentElement.getAttribute('data-theme');
  return THEMES.find((theme) => theme === set) ?? 'light';
}

/** Shows a theme, and remembers it. */
export function setTheme(theme: Theme): void {
  document.documentElement.setAttribute('data-theme', theme);
  document.querySelector('meta[name=theme-color]')?.setAttribute('content', PAPER[theme]);
  try {
    localStorage.setItem(KEY, theme);
  } catch {
    // A browser that keeps nothing still shows the theme.
  }
  dispatchEvent(new Event(KEY));
}

function subscribe(changed: () => void): () => void {
  addEventListener(KEY, changed);
  return () => removeEventListener(KEY, changed);
}

/** The theme, and how to go on to the next one. */
export function useTheme(): [Theme, () => void] {
  const theme = useSyncExternalStore(subscribe, presentTheme);
  const next = THEMES[(THEMES.indexOf(theme) + 1) % THEMES.length] ?? 'light';
  return [theme, () => setTheme(next)];
}
