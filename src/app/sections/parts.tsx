/** Small parts of section bodies. */
import type { ReactNode } from 'react';

/** A plain sentence of caution where it belongs. */
export const Caution = ({ children }: { children: ReactNode }) => <p className="caution w2">{children}</p>;

/** Figures that few need. */
export const More = ({ title, children }: { title: string; children: ReactNode }) => (
  <details className="more w2">
    <summary>{title}</summary>
    <div className="grid">{children}</div>
  </details>
);
