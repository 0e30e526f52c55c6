import { fileName } from './file-name.ts';

/** Hands a file over that is named by a title. */
export function saveFile(title: string, ending: string, file: Blob): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = fileName(title, ending);
  link.click();
  // Not before the browser has begun with it.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
