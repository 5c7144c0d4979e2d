/** In the head of the findings: what is heard of a change that was taken, and what is seen of one that is looked at. */
import { useFixes } from './fixStore.ts';
import { PreviewOver } from './PreviewOver.tsx';

export function Head() {
  const taken = useFixes((state) => state.taken);
  const failed = useFixes((state) => state.failed);
  return (
    <>
      {failed !== null && (
        <span className="s">
          {failed === 'missing' ? 'Ways out could not be fetched.' : 'Ways out could not be worked out.'}
        </span>
      )}
      <span className="vh" role="status">
        {taken && taken.at !== 'ladder' && taken.text}
      </span>
      <PreviewOver />
    </>
  );
}
