/** What is put on paper: a heading, tables of any length, and lists at the end. Rows are made one by one, as they are drawn. */

/** One column of a printed table. */
export interface PrintColumn {
  id: string;
  heading: string;
  /** Width of its widest cell, in parts of the type's size; what grows wraps. */
  em: number;
  /** Figures stand to the right. */
  figure?: boolean;
  /** Stands in every table of the document, so that rows can be told apart. */
  leads?: boolean;
  /** Goes into a table of its own where there is no room. */
  movable?: boolean;
  /** Takes a share of the room that is left. */
  grows?: number;
  text: (index: number) => string;
  /** Side from which an axis arrives there: 1 going up its scale, -1 going down, 0 staying. */
  arrives?: (index: number) => number;
}

/** One row: a line of the table, or something said across it. */
export type PrintRow =
  /** `done` null: nothing to tick. */
  | { kind: 'line'; index: number; done: boolean | null }
  | { kind: 'shot' | 'action'; text: string; aside: string }
  | { kind: 'break' | 'day'; text: string };

/** The rows of a document: the same in each of its tables. */
export interface PrintRows {
  count: number;
  at: (row: number) => PrintRow;
}

/** A list at the end. */
export interface PrintList {
  title: string;
  items: readonly string[];
}

/** A sheet for paper. */
export interface PrintDocument {
  title: string;
  kind: string;
  /** Facts of the production, joined in one line. */
  facts: readonly string[];
  /** Said under the facts, each a paragraph. */
  remarks: readonly string[];
  columns: readonly PrintColumn[];
  rows: PrintRows;
  lists: readonly PrintList[];
}

/** Page header, name of the document, and of a file that it is printed to. */
export const documentName = ({ title, kind }: PrintDocument): string => `${title}: ${kind.toLowerCase()}`;
