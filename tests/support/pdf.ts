import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a printed page says, and how. */
export interface PdfPage {
  /** In points. */
  readonly width: number;
  readonly height: number;
  /** All text without white space: where lines are broken says nothing. */
  readonly text: string;
  /** The least height of a text, in points. */
  readonly leastText: number;
  /** Every colour of lines, areas and letters. */
  readonly colours: readonly string[];
}

/** Reads a PDF's pages. */
export async function pdfPages(data: Buffer): Promise<readonly PdfPage[]> {
  const task = getDocument({ data: new Uint8Array(data), verbosity: 0 });
  const document = await task.promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const items = (await page.getTextContent()).items.flatMap((item) => ('str' in item ? [item] : []));
    const written = items.filter(({ str }) => str.trim() !== '');
    const heights = written.map(({ transform }) => Math.hypot(Number(transform[2]), Number(transform[3])));
    const { fnArray, argsArray } = await page.getOperatorList();
    const colours = fnArray.flatMap((operator, index) =>
      operator === OPS.setFillRGBColor || operator === OPS.setStrokeRGBColor
        ? [JSON.stringify(argsArray[index])]
        : [],
    );
    pages.push({
      width,
      height,
      text: written
        .map(({ str }) => str)
        .join('')
        .replace(/\s/g, ''),
      leastText: Math.min(...heights),
      colours: [...new Set(colours)],
    });
  }
  await task.destroy();
  return pages;
}
