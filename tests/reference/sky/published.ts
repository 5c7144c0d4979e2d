/** Positions, rise and set, refraction, profile angles, views and star trails that were published or worked. */
import { sunEvents } from '../../../src/engine/sky/day.ts';
import type { SunEventName } from '../../../src/engine/sky/names.ts';
import { patchOn, profileAngleDeg } from '../../../src/engine/sky/pane.ts';
import { creepMm } from '../../../src/engine/sky/patch.ts';
import { moonLitShare, refractionDeg, sunAt } from '../../../src/engine/sky/position.ts';
import { halfViewDeg, starTrailPx } from '../../../src/engine/sky/view.ts';
import { localDay } from '../../../src/engine/time/day.ts';
import { plainPlan } from '../plans.ts';
import { type NumberCase, numberRow, type Row, type TextCase, textRow } from '../rows.ts';

const SPA = 'NREL/TP-560-34302, App. A.5, Table A5.1 (V1)';
const SPA_TABLE = 'NREL/TP-560-34302, App. A.2, Table A2.1 (V1)';
const SPA_SITE = 'SPA website, Golden CO, quoted in pvlib’s tests (V2)';
const USNO = 'USNO tables of 2015, quoted in pvlib’s tests (V2)';
const TWO_TOOLS = 'SPA and ephem 4.1.4 agree within 1 s (computed)';
const MEEUS_16 = 'Meeus, Astronomical Algorithms, 16.4, through soniakeys/meeus (V2)';
const MEEUS_48 = 'Meeus, Astronomical Algorithms, ex. 48.a (V2)';
const PROFILE =
  'ASHRAE Handbook of Fundamentals, fenestration: tan P = tan(altitude)/cos(gamma) (from memory)';
const DUFFIE = 'Duffie & Beckman, profile angle, phi 43, 16 March 16:00, azimuth 25 (from memory)';
const SIMILAR = 'similar triangles, worked by hand (computed)';
const CLAFF = 'B. Claff, Field of View Values for Common Focal Lengths, 2006 (V1)';
const DRIFT = 'driftscan.com/files/pixsec.txt (V1)';

/** The worked example: 12:30:30 at UTC-7. */
const GOLDEN = { ms: Date.parse('2003-10-17T19:30:30Z'), latitudeDeg: 39.742476, longitudeDeg: -105.1786 };

/** Events of a day of 24 hours about the local noon of a longitude. */
function about(date: string, latitudeDeg: number, longitudeDeg: number) {
  const startMs = Date.parse(`${date}T12:00Z`) - longitudeDeg * 240_000 - 43_200_000;
  return sunEvents({ date, startMs, endMs: startMs + 86_400_000 }, latitudeDeg, longitudeDeg);
}

const instantOf = (
  date: string,
  latitudeDeg: number,
  longitudeDeg: number,
  name: SunEventName,
): number | null => about(date, latitudeDeg, longitudeDeg).find((event) => event.name === name)?.ms ?? null;

const seconds = (ms: number | null): number => (ms === null ? Number.NaN : ms / 1000);

function spaRows(): Row[] {
  const { ms, latitudeDeg, longitudeDeg } = GOLDEN;
  const sun = sunAt(ms, latitudeDeg, longitudeDeg);
  const time = (date: string, name: SunEventName, iso: string): NumberCase => ({
    at: name,
    got: seconds(instantOf(date, latitudeDeg, longitudeDeg, name)),
    want: Date.parse(iso) / 1000,
  });
  return [
    numberRow(
      {
        quantity: 'geometric altitude and azimuth of the sun',
        reference: SPA,
        regime: 'the worked example',
        bound: 0.01,
        unit: '°',
      },
      [
        // SUN-08 and SUN-10; its altitude is seen from 1830 m, which changes the parallax by nothing that shows.
        { at: 'e0', got: sun.geometricAltitudeDeg, want: 39.872046 },
        { at: 'azimuth', got: sun.azimuthDeg, want: 194.34024 },
      ],
    ),
    numberRow(
      {
        quantity: 'sunrise, transit, sunset',
        reference: SPA,
        regime: 'the worked example',
        bound: 5,
        unit: 's',
      },
      [
        time('2003-10-17', 'sunrise', '2003-10-17T13:12:43.46Z'),
        time('2003-10-17', 'solarNoon', '2003-10-17T18:46:04.97Z'),
        // The report's sunset is that of the UT day: the evening before by the local calendar.
        time('2003-10-16', 'sunset', '2003-10-17T00:20:19.19Z'),
      ],
    ),
  ];
}

/** Date, latitude, rise, set at Greenwich. */
const GREENWICH: readonly (readonly [string, number, string, string])[] = [
  ['1994-01-02', 35, '07:08:12.8', '16:59:55.9'],
  ['1996-07-05', -35, '07:08:15.4', '17:01:04.5'],
  ['2004-12-04', -35, '04:38:57.1', '19:02:02.5'],
];

/** Date, latitude, longitude, zone of a fixed offset, rise, set to the minute. */
const TO_THE_MINUTE: readonly (readonly [string, number, number, number, string, string])[] = [
  ['2015-01-02', 39, -105, -7, '07:19', '16:49'],
  ['2015-04-02', 39, -105, -7, '05:43', '18:24'],
  ['2015-08-02', 39, -105, -7, '05:01', '19:10'],
  ['2015-12-02', 39, -105, -7, '07:01', '16:38'],
  ['2015-01-02', 39.917, 116.383, 8, '07:36', '17:00'],
  ['2015-04-02', 39.917, 116.383, 8, '05:58', '18:39'],
  ['2015-08-02', 39.917, 116.383, 8, '05:13', '19:28'],
  ['2015-12-02', 39.917, 116.383, 8, '07:17', '16:50'],
];

const GOLDEN_2015: readonly (readonly [string, SunEventName, string])[] = [
  ['2015-01-02', 'sunrise', '07:21:55'],
  ['2015-01-02', 'solarNoon', '12:04:45'],
  ['2015-01-02', 'sunset', '16:47:43'],
  ['2015-08-02', 'sunrise', '05:00:27'],
  ['2015-08-02', 'solarNoon', '12:06:58'],
  // Printed for 2 August, but of the UT day: the evening before by the local calendar.
  ['2015-08-01', 'sunset', '19:13:58'],
];

/** A clock time of a date at a fixed offset from UTC, seconds of the epoch. */
const clockS = (date: string, time: string, offsetH = 0): number =>
  Date.parse(`${date}T${time}Z`) / 1000 - offsetH * 3600;

function tableRows(): Row[] {
  return [
    numberRow(
      {
        quantity: 'sunrise and sunset',
        reference: SPA_TABLE,
        regime: '3 days at Greenwich',
        bound: 5,
        unit: 's',
      },
      GREENWICH.flatMap(([date, latitude, rise, set]) => [
        {
          at: `${date} rise`,
          got: seconds(instantOf(date, latitude, 0, 'sunrise')),
          want: clockS(date, rise),
        },
        { at: `${date} set`, got: seconds(instantOf(date, latitude, 0, 'sunset')), want: clockS(date, set) },
      ]),
    ),
    numberRow(
      {
        quantity: 'sunrise and sunset',
        reference: USNO,
        regime: '8 days, printed to the minute',
        bound: 36,
        unit: 's',
      },
      TO_THE_MINUTE.flatMap(([date, latitude, longitude, offsetH, rise, set]) => [
        {
          at: `${date} ${longitude} rise`,
          got: seconds(instantOf(date, latitude, longitude, 'sunrise')),
          want: clockS(date, rise, offsetH),
        },
        {
          at: `${date} ${longitude} set`,
          got: seconds(instantOf(date, latitude, longitude, 'sunset')),
          want: clockS(date, set, offsetH),
        },
      ]),
    ),
    numberRow(
      {
        quantity: 'sunrise, noon, sunset',
        reference: SPA_SITE,
        regime: '3 days, printed to the second',
        bound: 5,
        unit: 's',
      },
      GOLDEN_2015.map(([date, name, time]) => ({
        at: `${date} ${name}`,
        got: seconds(instantOf(date, 39.743, -105.178, name)),
        want: clockS(date, time, -7),
      })),
    ),
  ];
}

/** Place, zone, local date, and UTC instants of its events; `none` where there is none. */
const SITES: readonly (readonly [
  string,
  number,
  number,
  string,
  string,
  Partial<Record<SunEventName, string>>,
])[] = [
  [
    'London',
    51.5074,
    -0.1278,
    'Europe/London',
    '2026-03-20',
    {
      sunrise: '2026-03-20T06:03:24Z',
      sunset: '2026-03-20T18:13:29Z',
      civilDawn: '2026-03-20T05:30:08Z',
      civilDusk: '2026-03-20T18:46:51Z',
      nauticalDawn: '2026-03-20T04:50:51Z',
      nauticalDusk: '2026-03-20T19:26:18Z',
      astronomicalDawn: '2026-03-20T04:10:00Z',
      astronomicalDusk: '2026-03-20T20:07:24Z',
    },
  ],
  [
    'London',
    51.5074,
    -0.1278,
    'Europe/London',
    '2026-06-21',
    {
      sunrise: '2026-06-21T03:43:05Z',
      sunset: '2026-06-21T20:21:33Z',
      civilDawn: '2026-06-21T02:55:19Z',
      civilDusk: '2026-06-21T21:09:19Z',
      nauticalDawn: '2026-06-21T01:40:40Z',
      nauticalDusk: '2026-06-21T22:23:58Z',
      astronomicalDawn: 'none',
      astronomicalDusk: 'none',
    },
  ],
  [
    'London',
    51.5074,
    -0.1278,
    'Europe/London',
    '2026-12-21',
    { sunrise: '2026-12-21T08:03:45Z', sunset: '2026-12-21T15:53:23Z', civilDusk: '2026-12-21T16:33:44Z' },
  ],
  [
    'Sydney',
    -33.8688,
    151.2093,
    'Australia/Sydney',
    '2026-12-21',
    {
      sunrise: '2026-12-20T18:40:38Z',
      sunset: '2026-12-21T09:05:24Z',
      civilDawn: '2026-12-20T18:11:29Z',
      astronomicalDusk: '2026-12-21T10:49:48Z',
    },
  ],
  [
    'Quito',
    -0.1807,
    -78.4678,
    'America/Guayaquil',
    '2026-03-20',
    {
      sunrise: '2026-03-20T11:17:59Z',
      sunset: '2026-03-20T23:24:29Z',
      nauticalDusk: '2026-03-21T00:09:08Z',
      astronomicalDusk: '2026-03-21T00:33:08Z',
    },
  ],
  [
    'Kathmandu',
    27.7172,
    85.324,
    'Asia/Kathmandu',
    '2026-06-21',
    { sunrise: '2026-06-20T23:23:31Z', sunset: '2026-06-21T13:17:24Z', civilDusk: '2026-06-21T13:44:03Z' },
  ],
  [
    'Tromso',
    69.6492,
    18.9553,
    'Europe/Oslo',
    '2026-06-21',
    { sunrise: 'none', sunset: 'none', civilDawn: 'none', nauticalDusk: 'none', astronomicalDusk: 'none' },
  ],
  [
    'Tromso',
    69.6492,
    18.9553,
    'Europe/Oslo',
    '2026-12-21',
    {
      sunrise: 'none',
      sunset: 'none',
      civilDawn: '2026-12-21T08:31:15Z',
      civilDusk: '2026-12-21T12:53:09Z',
      nauticalDawn: '2026-12-21T06:46:43Z',
      nauticalDusk: '2026-12-21T14:37:42Z',
      astronomicalDawn: '2026-12-21T05:28:19Z',
      astronomicalDusk: '2026-12-21T15:56:05Z',
    },
  ],
];

function siteRows(): Row[] {
  const times: NumberCase[] = [];
  const absent: TextCase[] = [];
  for (const [site, latitude, longitude, zone, date, wanted] of SITES) {
    const events = sunEvents(localDay(date, zone), latitude, longitude);
    for (const [name, iso] of Object.entries(wanted)) {
      const all = events.filter((event) => event.name === name);
      const at = `${site} ${date} ${name}`;
      absent.push({
        at,
        got: all.some(({ ms }) => ms !== null) ? 'some' : 'none',
        want: iso === 'none' ? 'none' : 'some',
      });
      if (iso !== 'none') times.push({ at, got: seconds(all[0]?.ms ?? null), want: Date.parse(iso) / 1000 });
    }
  }
  return [
    // Towards midsummer London's nautical twilight is slow: 0.06 deg a minute.
    numberRow(
      {
        quantity: 'events of local days',
        reference: TWO_TOOLS,
        regime: '8 days, 6 zones',
        bound: 10,
        unit: 's',
      },
      times,
    ),
    textRow(
      { quantity: 'whether an event happens on a local day', reference: TWO_TOOLS, regime: 'the same days' },
      absent,
    ),
  ];
}

/** True altitude in degrees, refraction in minutes of arc. */
const REFRACTION: readonly (readonly [number, number])[] = [
  [-0.575, 34.444],
  [0, 28.982],
  [1, 21.744],
  [5, 9.674],
  [10, 5.408],
  [45, 1.013],
];

/** Altitude, wall-solar azimuth, profile angle (WIN-02). */
const PROFILES: readonly (readonly [number, number, number])[] = [
  [30, 0, 30],
  [30, 45, 39.2315],
  [45, 60, 63.4349],
  [50, 30, 53.9948],
  [10, 70, 27.2732],
  [30, -45, 39.2315],
];

/** Altitude, wall-solar azimuth, depth, sideways shift, way over the floor of an edge 2 m high, metres (WIN-05). */
const PATCHES: readonly (readonly [number, number, number, number, number])[] = [
  [30, 45, 2.4495, 2.4495, 3.4641],
  [45, 60, 1, 1.7321, 2],
  [50, 30, 1.4534, 0.8391, 1.6782],
];

function paneRows(): Row[] {
  const facingDeg = 250;
  const { pane } = plainPlan(2, 10, { pane: { used: true, facingDeg, sillMm: 1000, headMm: 2000 } });
  const patch = (altitude: number, gamma: number) => {
    const found = patchOn(pane, 0, altitude, (facingDeg + gamma) % 360);
    if (found === null) throw new RangeError('no patch');
    return found;
  };
  return [
    numberRow(
      {
        quantity: 'profile angle',
        reference: PROFILE,
        regime: '6 suns before a wall',
        bound: 0.0001,
        unit: '°',
      },
      PROFILES.map(([altitude, gamma, want]) => ({
        at: `${altitude}, ${gamma}`,
        got: profileAngleDeg(facingDeg, altitude, (facingDeg + gamma) % 360) ?? Number.NaN,
        want,
      })),
    ),
    numberRow(
      {
        quantity: 'profile angle',
        reference: DUFFIE,
        regime: 'the worked example, printed to 0.1°',
        bound: 0.1,
        unit: '°',
      },
      // Zenith 70.3; the sun's azimuth 66.8 and the wall's 25 count from south to the west.
      [{ at: 'example', got: profileAngleDeg(205, 19.7, 246.8) ?? Number.NaN, want: 25.7 }],
    ),
    numberRow(
      {
        quantity: 'patch of an edge 2 m high',
        reference: SIMILAR,
        regime: 'depth, shift, way over the floor',
        bound: 0.0001,
        unit: 'm',
      },
      PATCHES.flatMap(([altitude, gamma, depth, shift, way]) => {
        const { farMm, skew } = patch(altitude, gamma);
        const at = `${altitude}, ${gamma}`;
        return [
          { at: `${at} depth`, got: farMm / 1000, want: depth },
          // To the right of the pane's axis the sun shifts the patch to the left.
          { at: `${at} shift`, got: (-skew * farMm) / 1000, want: shift },
          { at: `${at} way`, got: Math.hypot(farMm, skew * farMm) / 1000, want: way },
        ];
      }),
    ),
    numberRow(
      {
        quantity: 'creep of a patch',
        reference: SIMILAR,
        regime: 'two suns, middles 1.5 m high',
        bound: 0.1,
        unit: 'mm',
      },
      [
        {
          at: 'from (45, 60) to (50, 30)',
          // Middles 3/4 of the way to the edges above: (0.75, 1.2990) and (1.0901, 0.6293) m.
          got: creepMm(patch(45, 60), patch(50, 30)) ?? Number.NaN,
          want: 1000 * Math.hypot(1.4534 * 0.75 - 0.75, 0.8391 * 0.75 - 1.7321 * 0.75),
        },
      ],
    ),
  ];
}

/** Focal length and angles of view over width, height and diagonal of 36 x 24 mm, to 0.1 deg (OPT-01). */
const VIEWS: readonly (readonly [number, number, number, number])[] = [
  [14, 104.3, 81.2, 114.2],
  [24, 73.7, 53.1, 84.1],
  [35, 54.4, 37.8, 63.4],
  [50, 39.6, 27, 46.8],
  [85, 23.9, 16.1, 28.6],
  [135, 15.2, 10.2, 18.2],
];

function viewRows(): Row[] {
  return [
    numberRow(
      {
        quantity: 'angle of view',
        reference: CLAFF,
        regime: '6 focal lengths, printed to 0.1°',
        bound: 0.06,
        unit: '°',
      },
      VIEWS.flatMap(([focal, ...angles]) =>
        [36, 24, Math.hypot(36, 24)].map((side, i) => ({
          at: `${focal} mm, side ${i}`,
          got: 2 * halfViewDeg(side, focal),
          want: angles[i] as number,
        })),
      ),
    ),
    numberRow(
      {
        quantity: 'time in which a star crosses a pixel',
        reference: DRIFT,
        regime: '750 mm, 9 µm, declination 0 and 20°',
        bound: 0.00001,
        unit: 's',
      },
      [
        { at: '0', got: 1 / starTrailPx(1, 0, 750, 0.009), want: 0.164561 },
        { at: '20', got: 1 / starTrailPx(1, 20, 750, 0.009), want: 0.175122 },
      ],
    ),
    numberRow(
      {
        quantity: 'star trail',
        reference: 'rate x time x cos(declination) x focal length, by hand (computed)',
        regime: '24 mm, 6 µm, 30 s',
        bound: 0.001,
        unit: 'px',
      },
      [
        { at: '0', got: starTrailPx(30, 0, 24, 0.006), want: 8.751 },
        { at: '60', got: starTrailPx(30, 60, 24, 0.006), want: 4.375 },
      ],
    ),
  ];
}

export const measurePublished = (): Row[] => [
  ...spaRows(),
  ...tableRows(),
  ...siteRows(),
  numberRow(
    {
      quantity: 'refraction',
      reference: MEEUS_16,
      regime: 'true altitude -0.6° to 45°',
      bound: 0.001,
      unit: '′',
    },
    REFRACTION.map(([altitude, want]) => ({ at: `${altitude}`, got: refractionDeg(altitude) * 60, want })),
  ),
  numberRow(
    {
      quantity: 'lit share of the moon',
      reference: MEEUS_48,
      regime: '1992-04-12 0h TD',
      bound: 0.0005,
      unit: 'share',
    },
    // TD was 59 s ahead of UT.
    [{ at: 'example', got: moonLitShare(Date.parse('1992-04-11T23:59:01Z')), want: 0.6786 }],
  ),
  ...paneRows(),
  ...viewRows(),
];
