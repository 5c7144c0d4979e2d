/** The views of the plan: tabs in the bar, on a phone at the foot of the page. */
import { SCREENS, useScreen } from '../store/screen.ts';

export function Views() {
  const screen = useScreen();
  return (
    <nav className="views" aria-label="Views">
      {SCREENS.map(({ id, title }) => (
        <a key={id} href={`#${id}`} aria-current={screen === id ? 'page' : undefined}>
          {title}
        </a>
      ))}
    </nav>
  );
}
