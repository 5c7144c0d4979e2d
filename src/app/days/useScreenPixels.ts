/** What the screen does under a canvas: its pixels and its colours. */
import { useSyncExternalStore } from 'react';

function watchPixels(changed: () => void): () => void {
  const media = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
  // The question names the present ratio, so that any other is a change; it is then asked anew.
  let stop = () => {};
  const again = () => {
    stop = watchPixels(changed);
    changed();
  };
  media.addEventListener('change', again, { once: true });
  return () => {
    media.removeEventListener('change', again);
    stop();
  };
}

/** Device pixels of a CSS pixel. */
export const useDevicePixels = (): number => useSyncExternalStore(watchPixels, () => devicePixelRatio);

const themeNow = (): string => document.documentElement.getAttribute('data-theme') ?? '';

function watchTheme(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, { attributeFilter: ['data-theme'] });
  return () => observer.disconnect();
}

/** Name of the theme in force. */
export const useThemeName = (): string => useSyncExternalStore(watchTheme, themeNow);
