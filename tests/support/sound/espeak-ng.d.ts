/** The package has no types; this is what is used of it. */
declare module 'espeak-ng' {
  export interface Run {
    readonly FS: { readFile(path: string): Uint8Array };
  }
  const start: (options: {
    readonly arguments: readonly string[];
    readonly print?: (line: string) => void;
    readonly printErr?: (line: string) => void;
    readonly preRun?: () => void;
    readonly postRun?: () => void;
  }) => Promise<Run>;
  export { start as default };
}
