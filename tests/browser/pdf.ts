/** Reads what a PDF says, page by page, and where. */
import { getDocumentProxy } from 'unpdf';

/** A piece of text; points from the page's lower left corner. */
export interface PdfText {
  text: string;
  x: number;
  y: number;
  width: number;
  /** Of the type, points. */
  size: number;
}

export interface PdfPage {
  width: number;
  height: number;
  texts: PdfText[];
  /** Lines from top to bottom, their pieces joined. */
  lines: string[];
}

/** Pieces that stand on one line, within a point. */
function linesOf(texts: readonly PdfText[]): string[] {
  const rows: PdfText[][] = [];
  for (const piece of [...texts].sort((a, b) => b.y - a.y)) {
    const row = rows.at(-1);
    if (row?.[0] && row[0].y - piece.y < 1) row.push(piece);
    else rows.push([piece]);
  }
  return rows.map((row) =>
    row
      .sort((a, b) => a.x - b.x)
      .reduce((line, { text, x }, n) => {
        const before = row[n - 1];
        return line + (before && x - before.x - before.width > 1 ? ' ' : '') + text;
      }, '')
      .replace(/[\s\u00A0]+/g, ' '),
  );
}

/** Reads all pages of a PDF. */
export async function readPdf(bytes: Uint8Array): Promise<PdfPage[]> {
  const pdf = await getDocumentProxy(new Uint8Array(bytes));
  const pages: PdfPage[] = [];
  for (let n = 1; n <= pdf.numPages; n += 1) {
    const page = await pdf.getPage(n);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item) => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [a = 0, b = 0, , , x = Number.NaN, y = Number.NaN] = item.transform as number[];
      return [{ text: item.str, x, y, width: item.width, size: Math.hypot(a, b) }];
    });
    pages.push({ width, height, texts, lines: linesOf(texts) });
  }
  return pages;
}
