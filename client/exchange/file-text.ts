import { failure, success, type Result } from '../../shared/lib/result.ts';

/** The longest file that is looked at, in bytes: a plan of 300 exercises at three levels takes under one. */
export const longestFile = 2 * 1024 * 1024;

/** What is needed of a browser's `File`. */
export interface ReadableFile {
  readonly size: number;
  readonly arrayBuffer: () => Promise<ArrayBuffer>;
}

/** The text of a file; one that is too long is refused by its size, before any of it is read. */
export async function textOfFile(file: ReadableFile): Promise<Result<string, string>> {
  if (file.size > longestFile) return failure(`This file has ${megabytes(file.size)}; 2 MB are read.`);
  try {
    return textOf(new Uint8Array(await file.arrayBuffer()));
  } catch {
    return failure('The file could not be opened. It may have been moved. Choose it again.');
  }
}

/**
 * Text from bytes: UTF-8, UTF-16 where the first bytes say so, and else Windows-1252, as older spreadsheets write it.
 * A file that holds something else than text is refused.
 */
export function textOf(bytes: Uint8Array): Result<string, string> {
  const [first, second] = bytes;
  if (first === 0x50 && second === 0x4b)
    return failure('This file is compressed. Save it uncompressed, or unpack it, and choose it again.');
  const text =
    first === 0xff && second === 0xfe
      ? decode(bytes, 'utf-16le')
      : first === 0xfe && second === 0xff
        ? decode(bytes, 'utf-16be')
        : (decode(bytes, 'utf-8') ?? decode(bytes, 'windows-1252'));
  return text === undefined || text.includes('\0') ? failure('This file holds no text.') : success(text);
}

function decode(bytes: Uint8Array, encoding: string): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function megabytes(bytes: number): string {
  return `${String(Math.ceil(bytes / 1024 / 1024))} MB`;
}
