/** Hands a chart over as a picture. */
import { fileStem } from '../../outputs/file-name.ts';
import { clockOf, dateOf } from '../format/clock.ts';
import { handOver } from '../store/files.ts';
import { currentPlan } from '../store/plan.ts';
import { scheduleOf } from '../store/schedules.ts';
import { type Picture, panelSvg } from './panelSvg.ts';

/** Pixels of the PNG for one of the page. */
const FINER = 2;

/**
 * A picture as PNG.
 * @throws if the browser cannot draw it
 */
async function pngOf({ svg, width, height }: Picture): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = width * FINER;
  canvas.height = height * FINER;
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (!blob) throw new Error('the picture is too large for this browser');
  return blob;
}

function caption(sentence: string): string {
  const plan = currentPlan();
  const { firstFrameAt } = scheduleOf(plan).totals;
  const begins = `${dateOf(firstFrameAt)}, ${clockOf(firstFrameAt)}`;
  return [plan.title, begins, plan.place.name, sentence].filter((part) => part !== '').join(' \u00B7 ');
}

/** Texts that stand for the drawings of a chart. */
const described = (chart: HTMLElement): string =>
  [...chart.querySelectorAll('[role=img]')]
    .flatMap((part) => part.getAttribute('aria-label') ?? [])
    .join(' ');

/**
 * Saves a chart as it stands on the page.
 * @param name - of the chart, e.g. `Run`
 * @param sentence - what else the caption says
 * @throws if the browser cannot draw it
 */
export async function savePicture(
  chart: HTMLElement,
  name: string,
  sentence: string,
  kind: 'svg' | 'png',
): Promise<void> {
  const picture = panelSvg(chart, { title: name, caption: caption(sentence), description: described(chart) });
  const file = `${fileStem(currentPlan().title)}-${fileStem(name)}.${kind}`;
  if (kind === 'svg') handOver(file, picture.svg, 'image/svg+xml');
  else handOver(file, [await pngOf(picture)], 'image/png');
}
