/** The position that the browser knows, if it may tell. */
import { type Position, rounded } from './position.ts';

/** A position and how far off it may be, or why there is none. */
export type Located = (Position & { withinM: number }) | { error: string };

const TYPE_IT = 'Type the position instead.';

/** Codes of GeolocationPositionError. Source: W3C Geolocation, 8. */
const REASONS: Readonly<Record<number, string>> = {
  1: `The browser may not tell its position to this page. Allow it in the browser’s settings. ${TYPE_IT}`,
  2: `The browser cannot find its position here. ${TYPE_IT}`,
  3: `The position did not come within 20 s. Try again under the open sky. ${TYPE_IT}`,
};

const ABSENT = `This browser does not tell its position. ${TYPE_IT}`;

const OPTIONS: PositionOptions = { enableHighAccuracy: true, timeout: 20_000, maximumAge: 300_000 };

/** Asks the browser once. It asks the user, and nothing leaves the machine by this page. */
export function locate(geolocation: Geolocation | undefined): Promise<Located> {
  return new Promise((resolve) => {
    if (!geolocation) {
      resolve({ error: ABSENT });
      return;
    }
    geolocation.getCurrentPosition(
      ({ coords: { latitude, longitude, accuracy } }) =>
        resolve({
          // A metre on the ground is finer than any phone.
          latitudeDeg: rounded(latitude, 5),
          longitudeDeg: rounded(longitude, 5),
          withinM: accuracy,
        }),
      ({ code }) => resolve({ error: REASONS[code] ?? ABSENT }),
      OPTIONS,
    );
  });
}
