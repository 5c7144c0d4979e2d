/** Off the main thread: a year with windows takes several frames. */
import { answering, type YearAsk } from './yearWork.ts';

const answer = answering(
  (done) => postMessage(done),
  () => new Promise((resume) => setTimeout(resume)),
);

addEventListener('message', ({ data }: MessageEvent<YearAsk>) => void answer(data));
