const LOOKS = {
  left: { colour: 'var(--edge)', angle: 45 },
  guard: { colour: 'var(--edge)', angle: -45 },
  warning: { colour: 'var(--warn)', angle: 45 },
  stop: { colour: 'var(--stop)', angle: 45 },
} as const;

/** What a hatching says: still left, kept free, less than asked for, or missing. */
export type HatchKind = keyof typeof LOOKS;

/** A hatching to fill with: `fill="url(#id)"`; `bare` lets what is behind show through. */
export function Hatch({ id, kind, bare = false }: { id: string; kind: HatchKind; bare?: boolean }) {
  const { colour, angle } = LOOKS[kind];
  return (
    <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform={`rotate(${angle})`}>
      {!bare && <rect width="6" height="6" fill="var(--surface)" />}
      <path d="M0 0v6" stroke={colour} strokeWidth="1.7" />
    </pattern>
  );
}
