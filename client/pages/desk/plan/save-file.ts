import { fileName } from '../../../charts/file-name.ts';

/** Hands a text over as a file that is named by a title. */
export function saveFile(title: string, ending: string, type: string, text: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = fileName(title, ending);
  link.click();
  // Not before the browser has begun with it.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
