/** Figures of the copy that the plan is compared with, told from the plan's by the beginning of their names. */
const COPY = 'copy:';

/** What a figure of the plan is called if it is the copy's. */
export const figureOfCopy = (figure: string): string => `${COPY}${figure}`;

/** A name as the engine knows it, and whether it is asked of the copy. */
export const askedFigure = (name: string): { figure: string; ofCopy: boolean } =>
  name.startsWith(COPY) ? { figure: name.slice(COPY.length), ofCopy: true } : { figure: name, ofCopy: false };
