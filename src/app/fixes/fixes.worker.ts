/** Off the main thread: every way out is a plan that is worked out to see whether it holds. */
import { type Ask, answering } from './work.ts';

const answer = answering(
  (news) => postMessage(news),
  () => new Promise((resume) => setTimeout(resume)),
);

addEventListener('message', ({ data }: MessageEvent<Ask>) => void answer(data));
