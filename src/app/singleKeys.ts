/** Whether letters, digits and signs act anywhere on the page; people who speak to it can switch that off (WCAG 2.2, 2.1.4). */
const KEY = 'escapement-single-keys';

const kept = (): boolean => {
  try {
    return localStorage.getItem(KEY) !== 'off';
  } catch {
    return true;
  }
};

let on = kept();

export const singleKeysOn = (): boolean => on;

/** Switches them, and remembers it. */
export function setSingleKeys(wanted: boolean): void {
  on = wanted;
  try {
    localStorage.setItem(KEY, wanted ? 'on' : 'off');
  } catch {
    // A browser that keeps nothing still does as it is told, until it is closed.
  }
}
